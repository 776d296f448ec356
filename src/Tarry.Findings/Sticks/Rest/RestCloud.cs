using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Circles;
using Tarry.Statistics.Descriptives;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Sticks.Rest;

/// <summary>The positions at rest of one session, for a drawing.</summary>
/// <param name="Session">The session.</param>
/// <param name="Positions">How many positions there are.</param>
/// <param name="Points">Positions evenly chosen from all, in per cent of half the range.</param>
/// <param name="Ellipse">What holds 95 % of a normal cloud of that mean and scatter.</param>
public sealed record RestCloud(SessionKey Session, int Positions, IReadOnlyList<(double X, double Y)> Points, CloudEllipse Ellipse)
{
    private const int MostPoints = 80;

    internal static RestCloud? Of(StickRecording recording)
    {
        if (recording.Count < 2)
        {
            return null;
        }

        var stride = Math.Max(1, recording.Count / MostPoints);
        var points = Enumerable.Range(0, recording.Count / stride).Select(index => (recording.X.Percent[index * stride], recording.Y.Percent[index * stride]));
        return new RestCloud(recording.Key, recording.Count, [.. points], CloudEllipse.Of(recording.X.Percent, recording.Y.Percent));
    }
}
