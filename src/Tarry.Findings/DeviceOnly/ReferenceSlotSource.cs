namespace Tarry.Findings.DeviceOnly;

/// <summary>How the reference's report interval is known. The JSON name is the word in lower case.</summary>
public enum ReferenceSlotSource
{
    /// <summary>From the report rate declared with the condition.</summary>
    Declared,

    /// <summary>No rate is declared; found from the reference's own presses and responses.</summary>
    Measured,

    /// <summary>Neither; taken to be <see cref="ReferenceSlot.AssumedMs"/>.</summary>
    Assumed,
}
