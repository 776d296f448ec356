namespace Tarry.Imports.HidReports;

/// <summary>The global items that hold at one place (HID 1.11, 6.2.2.7).</summary>
internal record struct HidGlobals
{
    public int UsagePage;
    public int LogicalMinimum;
    public uint LogicalMaximumBits;
    public int LogicalMaximumSigned;
    public int PhysicalMinimum;
    public int PhysicalMaximum;
    public int UnitExponent;
    public uint Unit;
    public int ReportSize;
    public int ReportCount;
    public int? ReportId;

    /// <summary>
    /// Where the minimum is not negative the range is taken as unsigned, so that the one-byte maximum 255 that many devices
    /// write means 255 and not -1; the Linux HID core reads it likewise (drivers/hid/hid-core.c, hid_parser_global).
    /// </summary>
    public readonly long LogicalMaximum => LogicalMinimum < 0 ? LogicalMaximumSigned : LogicalMaximumBits;
}
