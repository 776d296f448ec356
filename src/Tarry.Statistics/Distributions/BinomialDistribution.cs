namespace Tarry.Statistics.Distributions;

/// <summary>The binomial distribution: how many of n independent trials succeed. Exact for n up to millions.</summary>
public static class BinomialDistribution
{
    /// <summary>The probability of exactly <paramref name="count"/> successes.</summary>
    public static double Probability(int count, int trials, double share)
    {
        Require(trials, share);
        return count < 0 || count > trials ? 0 : BinomialTerm.Of(count, trials, share, 1 - share);
    }

    /// <summary>The probability of at most <paramref name="count"/> successes.</summary>
    public static double Cdf(int count, int trials, double share)
    {
        Require(trials, share);
        return count < 0 ? 0 : count >= trials ? 1 : IncompleteBeta.Of(trials - count, count + 1.0, 1 - share, share);
    }

    /// <summary>The smallest count whose cumulative probability reaches <paramref name="probability"/>.</summary>
    public static int Quantile(double probability, int trials, double share)
    {
        Require(trials, share);
        Argument.RequireLevel(probability, nameof(probability));

        // The fuzz keeps a count whose cumulative probability equals the level but for rounding.
        var target = probability * (1 - 2e-15);
        var guess = (trials * share) + (NormalDistribution.Quantile(probability) * Math.Sqrt(trials * share * (1 - share)));
        var count = Math.Clamp((int)Math.Floor(guess), 0, trials);

        // From one cumulative probability near the answer, walk by single probabilities.
        var cumulative = Cdf(count, trials, share);
        var single = Probability(count, trials, share);
        while (count > 0 && cumulative - single >= target)
        {
            cumulative -= single;
            single *= count * (1 - share) / ((trials - count + 1) * share);
            count--;
        }

        while (count < trials && cumulative < target)
        {
            count++;
            single *= (trials - count + 1) * share / (count * (1 - share));
            cumulative += single;
        }

        return count;
    }

    private static void Require(int trials, double share)
    {
        Argument.RequireAtLeast(trials, 1, nameof(trials), "Capture trials first.");
        Argument.RequireLevel(share, nameof(share));
    }
}
