using Tarry.Statistics.Planning;

namespace Tarry.Findings.Plans;

/// <summary>What so many sittings reach: how many standard errors the goal takes, and how the standard error falls with trials.</summary>
/// <remarks>
/// The squared error of what is asked for is k (s^2 + s_w^2/n)/J: for the mean of a condition k = 1 with all of the scatter
/// between sessions, for a difference within sittings k = 2 with the part that conditions do not share. The goal G is
/// reached from G = factor x error on, so n = k s_w^2 / [J (G/factor)^2 - k s^2].
/// </remarks>
internal sealed class PlanDesign(PlanGoal goal, PlanVariances variances, int conditions)
{
    private const int Rounds = 30;
    private const double EquivalenceLevel = 0.05;

    private bool OfMean => goal.Kind == PlanGoalKind.HalfWidth;

    private double Sides => OfMean ? 1 : 2;

    private double SessionVariance => Square(OfMean ? variances.SessionSdMs : variances.OwnSessionSdMs);

    /// <summary>Trials a session, or null where no number of them suffices.</summary>
    public double? TrialsPerSession(int sittings)
    {
        // The fewer trials, the more of the scatter is independent between conditions, and the better it is known.
        double? trials = null;
        for (var round = 0; round < Rounds; round++)
        {
            var wanted = goal.Ms / Factor(sittings, trials);
            var left = (sittings * wanted * wanted) - (Sides * SessionVariance);
            double? next = left > 0 ? Sides * Square(variances.TrialSdMs) / left : null;
            if (next is null || (trials is { } last && Math.Abs(next.Value - last) < 0.01))
            {
                return next;
            }

            trials = next;
        }

        return trials;
    }

    /// <summary>What endless trials would reach.</summary>
    public double Endless(int sittings) => Factor(sittings, null) * Math.Sqrt(Sides * SessionVariance / sittings);

    private double Factor(int sittings, double? trials) => goal.Kind switch
    {
        PlanGoalKind.HalfWidth => HalfWidthPlan.ErrorsAssured(PooledDegreesOfFreedom(sittings, trials), goal.Assurance, goal.Level),
        PlanGoalKind.Difference => TestPower.ErrorsToTell(Residual(sittings), goal.Level, goal.Assurance),
        PlanGoalKind.Equivalence => TestPower.ErrorsToShowEquivalent(Residual(sittings), EquivalenceLevel, goal.Assurance),
        _ => throw new InvalidOperationException($"No plan for {goal.Kind}."),
    };

    // As the findings pool the differences of all pairs: what a two-way layout leaves.
    private double Residual(int sittings) => Math.Max(1, (conditions - 1) * (sittings - 1));

    // As the findings pool session means over conditions that share sittings: Satterthwaite over what a sitting does to all
    // of its conditions and what it does to each.
    private double PooledDegreesOfFreedom(int sittings, double? trials)
    {
        if (conditions == 1)
        {
            return sittings - 1;
        }

        var shared = Math.Max(0, Square(variances.SessionSdMs) - Square(variances.OwnSessionSdMs));
        var own = Square(variances.OwnSessionSdMs) + (trials is { } n ? Square(variances.TrialSdMs) / n : 0);
        var fromSittings = shared + (own / conditions);
        var fromResidual = own * (1 - (1.0 / conditions));
        var total = fromSittings + fromResidual;
        return total == 0
            ? Residual(sittings)
            : total * total / ((fromSittings * fromSittings / (sittings - 1)) + (fromResidual * fromResidual / Residual(sittings)));
    }

    private static double Square(double value) => value * value;
}
