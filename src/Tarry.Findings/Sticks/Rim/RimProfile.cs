using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>A turn, or the mean of one each way, as mean positions in equal bins of angle about the middle of the range.</summary>
/// <param name="X">Mean x in each bin, per cent of half the range.</param>
/// <param name="Y">Mean y.</param>
internal sealed record RimProfile(double[] X, double[] Y)
{
    // ISO 12181 filters a profile; a bin of one degree passes what is slower than 180 undulations a turn.
    private static readonly int[] BinCounts = [360, 180, 120, 72, 36];

    public int Bins => X.Length;

    /// <summary>The most bins, from 360 down to 36, of which each turn fills every one; null where not even 36 are filled.</summary>
    public static int? BinsOf(StickRecording recording, IReadOnlyList<RimTurn> turns)
    {
        foreach (var bins in BinCounts)
        {
            if (turns.All(turn => Filled(recording, turn, bins)))
            {
                return bins;
            }
        }

        return null;
    }

    public static RimProfile Of(StickRecording recording, RimTurn turn, int bins)
    {
        var (x, y, counts) = (new double[bins], new double[bins], new int[bins]);
        for (var i = turn.From; i < turn.To; i++)
        {
            var bin = Bin(recording, i, bins);
            x[bin] += recording.X.Percent[i];
            y[bin] += recording.Y.Percent[i];
            counts[bin]++;
        }

        // The mean of points along an arc lies inside it: by sin(h)/h of half its angle.
        var half = Math.PI / bins;
        var chord = Math.Sin(half) / half;
        for (var bin = 0; bin < bins; bin++)
        {
            x[bin] /= counts[bin] * chord;
            y[bin] /= counts[bin] * chord;
        }

        return new RimProfile(x, y);
    }

    public static RimProfile MeanOf(IReadOnlyList<RimProfile> profiles)
    {
        var (x, y) = (new double[profiles[0].Bins], new double[profiles[0].Bins]);
        foreach (var profile in profiles)
        {
            for (var bin = 0; bin < x.Length; bin++)
            {
                x[bin] += profile.X[bin] / profiles.Count;
                y[bin] += profile.Y[bin] / profiles.Count;
            }
        }

        return new RimProfile(x, y);
    }

    private static bool Filled(StickRecording recording, RimTurn turn, int bins)
    {
        var seen = new bool[bins];
        var count = 0;
        for (var i = turn.From; i < turn.To && count < bins; i++)
        {
            var bin = Bin(recording, i, bins);
            count += seen[bin] ? 0 : 1;
            seen[bin] = true;
        }

        return count == bins;
    }

    private static int Bin(StickRecording recording, int index, int bins)
    {
        var turn = recording.Direction(index) / (2 * Math.PI);
        return (int)((turn < 0 ? turn + 1 : turn) * bins) % bins;
    }
}
