namespace Tarry.Imports.HidReports;

/// <summary>Which way a report goes. The numbers are the main item's tag.</summary>
public enum HidReportKind
{
    /// <summary>From the device to the host.</summary>
    Input = 8,

    /// <summary>From the host to the device.</summary>
    Output = 9,

    /// <summary>Either way, over the control pipe.</summary>
    Feature = 11,
}
