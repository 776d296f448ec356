using Tarry.Findings;
using Tarry.Findings.ReportStreams;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>The report streams of a study in sentences for a terminal.</summary>
internal static class ReportStreamText
{
    public static void Write(FindingsDocument document, Terminal terminal)
    {
        foreach (var stream in document.ReportStreams ?? [])
        {
            terminal.Out.WriteLine(Sentence(stream));
        }
    }

    private static string Sentence(ReportStreamFinding stream)
    {
        var heading = Invariant($"report stream {stream.Session}, {stream.Device} 0x{stream.Endpoint.Number:x2}: {Counted.Of(stream.Reports, "report")}");
        if (stream is not { Interval: Estimate<Latency> interval, Slots: { } slots })
        {
            return $"{heading}; the report interval cannot be told: {EstimateText.Of(stream.Interval, value => value.Milliseconds)}. {Declared(stream)}";
        }

        var decimals = Math.Max(3, Numbers.Decimals(interval.Interval.High.Milliseconds - interval.Interval.Low.Milliseconds));
        string Ms(double value) => Numbers.Fixed(value, decimals);
        return Invariant($"{heading}, one every {Ms(interval.Value.Milliseconds)} ms (95 % interval {Ms(interval.Interval.Low.Milliseconds)} to {Ms(interval.Interval.High.Milliseconds)}); {slots.Filled} slots in a row filled, {slots.Missed} missed, {Counted.Of(slots.Pauses, "pause")}, {slots.Doubled} doubled{(slots.JitterMs is { } jitter ? Invariant($", jitter sd {jitter * 1_000:0.#} us") : "")}. {Declared(stream)}");
    }

    private static string Declared(ReportStreamFinding stream) => stream switch
    {
        { Declared: { } declared, ObservedOverDeclared: { } ratio } => Invariant($"Declared {declared.Milliseconds:0.###} ms: observed is {ratio:0.###} of it."),
        { Declared: { } declared } => Invariant($"Declared {declared.Milliseconds:0.###} ms."),
        { Endpoint.BInterval: { } interval } => Invariant($"bInterval is {interval}; what that is in time depends on the speed, which the capture does not say (import with --usb-speed)."),
        _ => "The capture does not say a declared interval.",
    };
}
