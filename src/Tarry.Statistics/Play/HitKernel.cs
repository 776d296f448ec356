using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.Play;

/// <summary>The probability that a press hits, by how far its latency is from the compensation: Phi((w - x)/s) - Phi((-w - x)/s), for s = 0 whether |x| &lt;= w.</summary>
internal readonly record struct HitKernel(double Window, double PlayerSd)
{
    /// <summary>Forgives the rounding of sums at the edge of a closed window: a picosecond, far below a tick.</summary>
    public const double Rounding = 1e-9;

    // Beyond so many standard deviations nothing is left that a double could tell from 0 in a sum.
    private const double Reach = 8.5;

    /// <summary>From where on the probability is 0.</summary>
    public double Extent => Window + (Reach * PlayerSd) + (PlayerSd == 0 ? Rounding : 0);

    public double At(double distance) => PlayerSd == 0
        ? (Math.Abs(distance) <= Window + Rounding ? 1 : 0)
        : NormalDistribution.Cdf((Window - distance) / PlayerSd) - NormalDistribution.Cdf((-Window - distance) / PlayerSd);

    /// <summary>How the probability changes with the compensation, once and twice differentiated; the player's standard deviation is above 0.</summary>
    public (double Slope, double Curvature) ByCompensation(double distance)
    {
        var (u, v) = ((Window - distance) / PlayerSd, (Window + distance) / PlayerSd);
        var (atU, atV) = (NormalDistribution.Density(u), NormalDistribution.Density(v));
        return ((atU - atV) / PlayerSd, -((u * atU) + (v * atV)) / (PlayerSd * PlayerSd));
    }
}
