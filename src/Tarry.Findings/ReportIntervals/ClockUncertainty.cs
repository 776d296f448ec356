using Tarry.Findings.Budgets;
using Tarry.Findings.Samples;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.ReportIntervals;

/// <summary>How wrong the clock of the data may be.</summary>
/// <param name="HalfWidthPpm">Half of a 95 % interval, in parts per million.</param>
/// <param name="Basis">What it rests on, in words.</param>
public sealed record ClockUncertainty(double HalfWidthPpm, string Basis)
{
    private const double Normal95 = 1.96;

    internal static ClockUncertainty Of(IReadOnlyList<SessionSample> sessions)
    {
        var segments = sessions.SelectMany(session => session.Record.Segments).ToList();
        if (segments.Count == 0 || segments.Exists(segment => segment.ClockFit is null))
        {
            return new ClockUncertainty(RigClass.Clock.HalfWidth!.Value, RigClass.Clock.Basis);
        }

        var fit = Normal95 * segments.Max(Uncertainty);
        var host = RigClass.Host.HalfWidth!.Value;
        return new ClockUncertainty(Math.Sqrt((fit * fit) + (host * host)), $"fitted against the host's clock; {RigClass.Host.Basis}");
    }

    private static double Uncertainty(Segment segment) => segment.ClockFit!.StandardUncertaintyPpm;
}
