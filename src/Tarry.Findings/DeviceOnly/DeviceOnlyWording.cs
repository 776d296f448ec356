using System.Globalization;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The words of what was assumed and of every refusal, the same on the command line, in the report and on the pages.</summary>
public static class DeviceOnlyWording
{
    /// <summary>What the band of a density holds.</summary>
    public const string Band = "sampling variation only; edges blurred";

    /// <summary>Why there is no density, and what to do, in one or two sentences.</summary>
    public static string Sentence(DeviceOnlyRefusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        string N(string name, string format = "0.###") =>
            refusal.Numbers.TryGetValue(name, out var value) ? value.ToString(format, CultureInfo.InvariantCulture) : "?";
        return refusal.Kind switch
        {
            DeviceOnlyRefusalKind.NoReference => "There is no reference condition with responses, so the chain is not known. Name one in study.toml and measure it in every sitting.",
            DeviceOnlyRefusalKind.NoSharedSitting => "The reference was not measured in a sitting of this condition, so how the chain spread latencies then is not known. Measure both in one sitting.",
            DeviceOnlyRefusalKind.ReferenceCautioned => "In every shared sitting the reference drifted, changed, kept step with its presses, or is known as intervals only; the cautions say which. The chain cannot be taken from it; measure the reference again.",
            DeviceOnlyRefusalKind.ConditionCautioned => "In every sitting with a sound reference this condition drifted, changed, kept step with its presses, or is known as intervals only; the cautions say which. Mend that and measure again.",
            DeviceOnlyRefusalKind.TooFewTrials => $"{N("trials", "N0")} responses of the condition and {N("reference_trials", "N0")} of the reference can be used; it takes {N("need", "N0")} and {N("reference_need", "N0")}. Capture more.",
            DeviceOnlyRefusalKind.SlotWaitAboveReference => $"The reference varies less (variance {N("reference_variance_ms2")} ms\u00b2) than the wait for a report slot of {N("reference_interval_ms")} ms alone would make it ({N("slot_variance_ms2")} ms\u00b2). Declare the report rate that it has with 'tarry condition --nominal-report-hz'.",
            DeviceOnlyRefusalKind.SpreadBelowReference => $"The condition varies no more than the reference would without the wait for its report slot (variances {N("variance_ms2")} and {N("reference_variance_ms2")} ms\u00b2 of which the wait is {N("slot_variance_ms2")}): nothing is left to draw. Look at the reference and its declared report rate.",
            _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal.Kind, "A refusal without words."),
        };
    }

    /// <summary>Why there is no density, in a word or two, such as for a figure.</summary>
    public static string Words(DeviceOnlyRefusalKind kind) => kind switch
    {
        DeviceOnlyRefusalKind.NoReference => "no reference",
        DeviceOnlyRefusalKind.NoSharedSitting => "never together",
        DeviceOnlyRefusalKind.ReferenceCautioned => "unsteady chain",
        DeviceOnlyRefusalKind.ConditionCautioned => "unsteady or coarse",
        DeviceOnlyRefusalKind.TooFewTrials => "too few trials",
        DeviceOnlyRefusalKind.SlotWaitAboveReference => "rate misstated",
        DeviceOnlyRefusalKind.SpreadBelowReference => "nothing left",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "A refusal without words."),
    };

    /// <summary>What the result rests on, a sentence each.</summary>
    public static IReadOnlyList<string> Assumptions(DeviceOnlyFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.ReferenceSlot is not { } slot)
        {
            return [];
        }

        var milliseconds = slot.IntervalMs.ToString("0.####", CultureInfo.InvariantCulture);
        return
        [
            slot.Source switch
            {
                ReferenceSlotSource.Declared => $"The reference waits for a report slot for up to {milliseconds} ms, as its declared report rate says.",
                ReferenceSlotSource.Measured => $"The reference waits for a report slot for up to {milliseconds} ms, as its own presses and responses say; no report rate is declared.",
                _ => $"No report rate is declared for the reference; it is taken to wait for a report slot for up to {milliseconds} ms. Declare it with 'tarry condition --nominal-report-hz': the mean is off by half of what this is off.",
            },
            "Presses fall at random against the report slots of the reference and of the device.",
            "What the chain adds does not depend on the device's delay.",
            "Zero is the reference's fixed delay: a device that hands its report on as the reference would without a slot to wait for. The wait for the device's own slot is inside.",
        ];
    }

    /// <summary>How the reference's report interval is known, as it stands in JSON, such as <c>declared</c>.</summary>
    public static string Key(ReferenceSlotSource source) => Hyphenated.Name(source.ToString());

    /// <summary>The kind as it stands in JSON, such as <c>no-shared-sitting</c>.</summary>
    public static string Key(DeviceOnlyRefusalKind kind) => Hyphenated.Name(kind.ToString());
}
