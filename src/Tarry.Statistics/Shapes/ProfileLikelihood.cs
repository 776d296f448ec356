namespace Tarry.Statistics.Shapes;

/// <summary>The profile-likelihood interval of a width: where twice the loss of log-likelihood is the 95 % point of chi-squared.</summary>
internal static class ProfileLikelihood
{
    // The width that is as good as none, in milliseconds.
    private const double NoWidth = 0.005;
    private const double RootOfCritical = 1.959963984540054;
    private const double CloseEnough = 0.01;
    private const int MostSteps = 12;
    private const double Gain = 1e-4;

    /// <summary>The interval of the width whose logarithm is one of the parameters.</summary>
    /// <param name="model">The model.</param>
    /// <param name="best">Its fit.</param>
    /// <param name="parameter">Which parameter.</param>
    /// <param name="held">Parameters that are held besides.</param>
    /// <returns>The limits, in milliseconds; low is 0 where no width at all is as likely.</returns>
    public static ConfidenceLimits Of(ILikelihoodModel model, LikelihoodFit best, int parameter, params int[] held)
    {
        var width = ShapeTemplate.Positive(best.Parameters[parameter]);
        var relative = 2 / Math.Sqrt(Math.Max(best.Information[parameter, parameter], 16));
        var low = Root(NoWidth) < RootOfCritical ? 0 : Find(width, NoWidth, width * Math.Exp(-relative));
        return new ConfidenceLimits(low, Find(width, double.PositiveInfinity, Math.Max(width, 10 * NoWidth) * Math.Exp(relative)));

        double Root(double at)
        {
            var start = (double[])best.Parameters.Clone();
            start[parameter] = Math.Log(at);
            var fit = FisherScoring.Climb(model, start, Gain, [parameter, .. held]);
            return Math.Sqrt(Math.Max(0, 2 * (best.LogLikelihood - fit.LogLikelihood)));
        }

        // The signed root of the loss is about linear in the width: secants, kept inside a bracket.
        double Find(double inside, double outside, double at)
        {
            for (var step = 0; step < MostSteps; step++)
            {
                var root = Root(at);
                if (Math.Abs(root - RootOfCritical) < CloseEnough)
                {
                    return at;
                }

                if (root < RootOfCritical)
                {
                    inside = at;
                }
                else
                {
                    outside = at;
                }

                var next = width + ((at - width) * RootOfCritical / Math.Max(root, 0.2));
                var far = double.IsFinite(outside) ? outside : Math.Max(next, 2 * inside);
                at = (next - inside) * (next - far) < 0 ? next : 0.5 * (inside + far);
            }

            return at;
        }
    }
}
