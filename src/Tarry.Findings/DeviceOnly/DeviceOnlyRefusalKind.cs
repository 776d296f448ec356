namespace Tarry.Findings.DeviceOnly;

/// <summary>What keeps the device alone from being told. The JSON name is the words with hyphens, in lower case.</summary>
public enum DeviceOnlyRefusalKind
{
    /// <summary>The study names no reference, or has no session of it.</summary>
    NoReference,

    /// <summary>The reference was measured in none of the condition's sittings.</summary>
    NoSharedSitting,

    /// <summary>In every shared sitting the reference drifted, changed, depended on itself or kept step with its presses.</summary>
    ReferenceCautioned,

    /// <summary>In every sitting whose reference can be used, the condition itself did so.</summary>
    ConditionCautioned,

    /// <summary>Too few trials of the condition or of the reference.</summary>
    TooFewTrials,

    /// <summary>The reference varies less than the wait for its report slot alone would make it.</summary>
    SlotWaitAboveReference,

    /// <summary>The condition varies no more than the reference would without the wait for its report slot.</summary>
    SpreadBelowReference,
}
