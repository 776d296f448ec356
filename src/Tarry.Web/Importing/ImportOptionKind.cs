namespace Tarry.Web.Importing;

/// <summary>What an option of an import is chosen from.</summary>
public enum ImportOptionKind
{
    /// <summary>Any text.</summary>
    Text,

    /// <summary>A number with a decimal point.</summary>
    Number,

    /// <summary>One of the option's own values.</summary>
    Choice,

    /// <summary>A condition of the study, or a new one.</summary>
    Condition,

    /// <summary>A sitting of the study, or a new one.</summary>
    Sitting,

    /// <summary>A column of the file.</summary>
    Column,

    /// <summary>Several columns of the file, between commas.</summary>
    Columns,

    /// <summary>A channel of the file.</summary>
    Channel,

    /// <summary>A device of the file.</summary>
    Device,

    /// <summary>A field of the chosen device's reports.</summary>
    DeviceField,

    /// <summary>A session of the study that has presses.</summary>
    Session,

    /// <summary>Another file that was brought in.</summary>
    OtherFile,
}
