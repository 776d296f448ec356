using System.Globalization;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The words of a report interval: its evidence, or why none is claimed and what would help. The same everywhere.</summary>
public static class ReportIntervalWording
{
    /// <summary>What speaks for an interval, in one sentence.</summary>
    /// <param name="finding">A finding with an interval.</param>
    public static string Evidence(ReportIntervalFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Evidence switch
        {
            { Kind: SlotGridKind.TwoGrids } two => string.Create(
                CultureInfo.InvariantCulture,
                $"Slots of this interval in front of frames of {finding.FrameInterval!.Value.Milliseconds:0.####} ms explain which frame showed {100 * two.ExplainedShare!.Value:0.0} % of the responses; their line stands {two.LineToThreshold:0.#} times above the false-alarm threshold, and the likelihood leads every rival by {two.LeadOverRivalNats!.Value:0} nats."),
            { } one => string.Create(
                CultureInfo.InvariantCulture,
                $"Latencies draw a sawtooth of this interval over the press times; its line stands {one.LineToThreshold:0.#} times above the false-alarm threshold, and the reference does not show it."),
            null when finding.Interval is not null => "The distribution of the latencies shows a block of this width beyond the chain's, as the reference shows that; press times, which a slot grid would take, are not known or too few.",
            null => "",
        };
    }

    /// <summary>How grid and shape go together, in one sentence; empty where there is only one of them.</summary>
    public static string Agreement(ReportIntervalFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return (finding.Agreement, finding.ShapeBlockWidth) switch
        {
            (SlotShapeAgreement.Agree, { } width) => string.Create(CultureInfo.InvariantCulture, $"The distribution agrees: its block is {width.Milliseconds:0.##} ms wide."),
            (SlotShapeAgreement.Conflict, { } width) => string.Create(CultureInfo.InvariantCulture, $"The distribution disagrees: its block is {width.Milliseconds:0.##} ms wide. The device may scan or debounce at an interval of its own, or wait for something else besides its report slot."),
            (SlotShapeAgreement.ShapeOnly, { } width) when finding.Interval is null => string.Create(CultureInfo.InvariantCulture, $"The distribution has a block {width.Milliseconds:0.##} ms wide, which may be the report interval."),
            _ => "",
        };
    }

    /// <summary>Why no interval is claimed, in one sentence.</summary>
    public static string Reason(UnidentifiedInterval unidentified)
    {
        ArgumentNullException.ThrowIfNull(unidentified);
        return unidentified.Reason switch
        {
            ReportIntervalReason.NoPressTimes => "Press times are not known, so responses cannot be laid over a slot grid.",
            ReportIntervalReason.LatenciesAreIntervals => "Latencies are known as intervals only, too coarse to be laid over a slot grid.",
            ReportIntervalReason.TooFewTrials => $"No session has {PressSeries.SmallestCount} responses, the fewest that a spectrum is worth.",
            ReportIntervalReason.PhaseLocked => $"The presses keep step with a period, so that the line of {Choices(unidentified.Choices)} may be theirs.",
            ReportIntervalReason.PressLattice => "The presses come so regularly that a report interval cannot be told from its images about the press rate.",
            ReportIntervalReason.NoGridSeen when unidentified.AtMost is { } most => string.Create(CultureInfo.InvariantCulture, $"No report slots are seen. If there are any, they are at most {most.Milliseconds:0.###} ms apart, or keep step with the frames."),
            ReportIntervalReason.NoGridSeen => "No report slots are seen.",
            ReportIntervalReason.ImagesNotToldApart => $"{Choices(unidentified.Choices)} explain the responses equally well: seen through frames they look alike.",
            ReportIntervalReason.FramesNotIndexed => $"Responses cannot be assigned to frames, and {Choices(unidentified.Choices)} may be a mixture of slots and frames.",
            ReportIntervalReason.Beat when unidentified.Choices.Count == 0 => "The slots keep step with the frames through the whole session, which hides their interval.",
            ReportIntervalReason.Beat => $"Slots, of {Choices(unidentified.Choices)} it seems, and frames beat so slowly that a session does not see two beats.",
            ReportIntervalReason.FurtherGrid => $"The reference shows a further grid behind the frames, such as the screen's refresh, and {Choices(unidentified.Choices)} may be its doing.",
            ReportIntervalReason.NotAttributed => $"A grid of {Choices(unidentified.Choices)} is seen, but nothing tells whether it is the device's or the chain's.",
            _ => throw new ArgumentOutOfRangeException(nameof(unidentified), unidentified.Reason, "A reason without words."),
        };
    }

    /// <summary>Why no interval is claimed, in a few words, such as for a table.</summary>
    public static string Words(ReportIntervalReason reason) => reason switch
    {
        ReportIntervalReason.NoPressTimes => "no press times",
        ReportIntervalReason.LatenciesAreIntervals => "latencies too coarse",
        ReportIntervalReason.TooFewTrials => "too few trials",
        ReportIntervalReason.PhaseLocked => "presses keep step",
        ReportIntervalReason.PressLattice => "presses too regular",
        ReportIntervalReason.NoGridSeen => "no slots seen",
        ReportIntervalReason.ImagesNotToldApart => "images look alike",
        ReportIntervalReason.FramesNotIndexed => "slots or frames",
        ReportIntervalReason.Beat => "in step with frames",
        ReportIntervalReason.FurtherGrid => "a further grid",
        ReportIntervalReason.NotAttributed => "device or chain",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "A reason without words."),
    };

    /// <summary>What would make it identifiable, in one sentence.</summary>
    public static string Remedy(UnidentifiedInterval unidentified)
    {
        ArgumentNullException.ThrowIfNull(unidentified);
        return unidentified.Reason switch
        {
            ReportIntervalReason.NoPressTimes => "Record when each press came.",
            ReportIntervalReason.LatenciesAreIntervals => "Measure with the rig, a logic analyser or a sound recording.",
            ReportIntervalReason.TooFewTrials => "Capture 2,000 presses a session.",
            ReportIntervalReason.PhaseLocked => "Let press intervals vary at random by at least 50 ms, or exclude the sessions that keep step.",
            ReportIntervalReason.PressLattice => "Let press intervals vary at random by at least 50 ms.",
            ReportIntervalReason.NoGridSeen => "Capture more presses, or take out what scatters behind the device; where the report rate may be a multiple of the frame rate, move the frame cap off it.",
            ReportIntervalReason.ImagesNotToldApart => "Run sittings with different frame caps, such as 4.1 and 3.7 ms, or capture more presses.",
            ReportIntervalReason.FramesNotIndexed => "Cap the frame rate so that frames stand on a stable grid, or take the frames out of the chain.",
            ReportIntervalReason.Beat => "Set the frame cap off the ratio of report and frame rate, such as 4.1 ms for 4.0, or capture for longer.",
            ReportIntervalReason.FurtherGrid => "Turn synchronisation with the screen off, or sense in front of it.",
            ReportIntervalReason.NotAttributed => "Run a reference in each sitting and state its report rate.",
            _ => throw new ArgumentOutOfRangeException(nameof(unidentified), unidentified.Reason, "A reason without words."),
        };
    }

    private static string Choices(IReadOnlyList<LatencyDifference> choices) => choices.Count == 0
        ? "what is seen"
        : string.Join(", ", choices.Take(6).Select(choice => choice.Milliseconds.ToString("0.####", CultureInfo.InvariantCulture))) + (choices.Count > 6 ? ", ..." : "") + " ms";
}
