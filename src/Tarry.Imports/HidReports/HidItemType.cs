namespace Tarry.Imports.HidReports;

/// <summary>The type of an item; the first four are the bits of a short item's prefix.</summary>
public enum HidItemType
{
    /// <summary>Makes a field, or opens or closes a collection.</summary>
    Main = 0,

    /// <summary>Holds for all main items that follow.</summary>
    Global = 1,

    /// <summary>Holds for the next main item.</summary>
    Local = 2,

    /// <summary>Not defined.</summary>
    Reserved = 3,

    /// <summary>A long item, whose tags are not defined by HID 1.11.</summary>
    LongItem = 4,
}
