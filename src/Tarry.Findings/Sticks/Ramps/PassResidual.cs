namespace Tarry.Findings.Sticks.Ramps;

/// <summary>The root mean square departure of a pass's positions from their straight line over the level, its ends left out.</summary>
internal static class PassResidual
{
    private const double EndMargin = 0.02;

    public static double Of(LevelPass pass)
    {
        var (from, to) = ((int)(EndMargin * pass.Count), pass.Count - (int)(EndMargin * pass.Count));
        double n = 0, l = 0, u = 0, ll = 0, lu = 0, uu = 0;
        var (level0, position0) = (pass.Levels[pass.Count / 2], pass.Positions[pass.Count / 2]);
        for (var i = from; i < to; i++)
        {
            var (level, position) = (pass.Levels[i] - level0, pass.Positions[i] - position0);
            n++;
            l += level;
            u += position;
            ll += level * level;
            lu += level * position;
            uu += position * position;
        }

        var (sll, slu, suu) = (ll - (l * l / n), lu - (l * u / n), uu - (u * u / n));
        return Math.Sqrt(Math.Max(0, (suu - (slu * slu / sll)) / n));
    }
}
