using Tarry.Rig.Sticks.Recording;

namespace Tarry.Web.Sticks;

/// <summary>Keeps the positions of the last seconds of a recording, for a figure that is drawn a few times a second.</summary>
internal sealed class StickTrailKeeper
{
    private const double KeptSeconds = 3;
    private const int MostDrawn = 250;
    private readonly Queue<(double Seconds, double X, double Y)> newest = new();

    /// <summary>Takes where the stick is.</summary>
    public void Add(StickProgress value)
    {
        newest.Enqueue((value.Seconds, value.X, value.Y));
        while (newest.Peek().Seconds < value.Seconds - KeptSeconds)
        {
            newest.Dequeue();
        }
    }

    /// <summary>The trail so far, thinned evenly where there is more than a figure shows; null before the first position.</summary>
    public StickTrail? Now()
    {
        if (newest.Count == 0)
        {
            return null;
        }

        var all = newest.ToArray();
        var every = (all.Length + MostDrawn - 1) / MostDrawn;
        return new StickTrail(
            all[^1].Seconds - all[0].Seconds,
            [.. all.Where((_, index) => (all.Length - 1 - index) % every == 0).Select(position => (position.X, position.Y))]);
    }
}
