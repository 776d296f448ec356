namespace Tarry.Imports.HidReports;

/// <summary>What can be wrong with a HID report descriptor.</summary>
public enum HidProblemKind
{
    /// <summary>The descriptor ends within an item.</summary>
    ItemCutOff,

    /// <summary>An item has the reserved type.</summary>
    ReservedType,

    /// <summary>An item has a tag that its type does not define.</summary>
    ReservedTag,

    /// <summary>An end of a collection where none is open.</summary>
    EndWithoutCollection,

    /// <summary>A collection that is not closed.</summary>
    CollectionNotClosed,

    /// <summary>A pop where nothing was pushed.</summary>
    PopWithoutPush,

    /// <summary>A push deeper than is kept.</summary>
    PushTooDeep,

    /// <summary>Collections nested deeper than is kept.</summary>
    CollectionsTooDeep,

    /// <summary>The report id 0, or one above 255.</summary>
    ReportIdOutOfRange,

    /// <summary>A field of no bits, of more bits than a value has, or of no count.</summary>
    FieldWithoutSize,

    /// <summary>A report longer than is kept.</summary>
    ReportTooLong,

    /// <summary>More fields than are kept.</summary>
    TooManyFields,

    /// <summary>A range of usages with one end, or with the greatest below the least.</summary>
    UsageRangeBroken,

    /// <summary>A logical range whose greatest value is below its least.</summary>
    LogicalRangeBroken,

    /// <summary>A delimiter that is closed and not open, or open and not closed.</summary>
    DelimiterBroken,

    /// <summary>Some reports have an id and others have none.</summary>
    SomeReportsWithoutId,
}
