using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Findings.Samples;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>The shapes of all conditions, each fitted once, and what follows from them.</summary>
internal sealed class ConditionShapes
{
    public const int FewestResponses = 200;
    private const int FewestInSession = 20;
    private const int FewestDifferent = 10;

    private readonly IReadOnlyDictionary<string, SessionDiagnosis[]> diagnoses;
    private readonly SessionScatter means;
    private readonly FittedCondition? reference;
    private readonly double? referenceIntervalMs;

    /// <summary>Shapes of the conditions of a study.</summary>
    /// <param name="reference">The reference condition's id, if there is one.</param>
    /// <param name="referenceReportHz">The report rate that is stated of it.</param>
    /// <param name="diagnoses">The sessions of every condition.</param>
    /// <param name="means">The scatter of session means, for the extreme quantile.</param>
    public ConditionShapes(string? reference, double? referenceReportHz, IReadOnlyDictionary<string, SessionDiagnosis[]> diagnoses, SessionScatter means)
    {
        (this.diagnoses, this.means) = (diagnoses, means);
        this.reference = reference is not null && diagnoses.ContainsKey(reference) ? Fit(reference).Fitted : null;
        referenceIntervalMs = referenceReportHz is { } hz ? 1000 / hz : null;
    }

    /// <summary>The condition with its shape, block width, late tail and the cautions that these call for.</summary>
    public ConditionFinding With(ConditionFinding condition)
    {
        var (fitted, notEnough) = condition.IsReference && reference is not null ? (reference, null) : Fit(condition.Id);
        var pool = new PooledSample([.. diagnoses[condition.Id].Select(diagnosis => diagnosis.Session)]);
        if (fitted is null)
        {
            return condition with
            {
                Shape = notEnough,
                BlockWidth = BlockWidths.TooFew(reference is not null && !condition.IsReference, referenceIntervalMs),
                LateTail = LateTails.Of(null, pool, means),
            };
        }

        var shape = ShapeFindings.Of(fitted);
        var width = BlockWidths.Of(fitted, condition.IsReference, reference, referenceIntervalMs);
        return condition with
        {
            Shape = shape,
            BlockWidth = width,
            LateTail = LateTails.Of(fitted, pool, means),
            Cautions = [.. condition.Cautions, .. ShapeCautions.Of(condition, fitted, width)],
        };
    }

    private (FittedCondition? Fitted, ShapeNotEnough? NotEnough) Fit(string condition)
    {
        var sessions = diagnoses[condition]
            .Where(diagnosis => diagnosis.InPool && diagnosis.Session.Latencies.Count >= FewestInSession)
            .Select(diagnosis => diagnosis.Session)
            .ToList();
        var responses = Estimates.Trials(sessions);
        if (responses < FewestResponses)
        {
            return (null, new ShapeNotEnough(responses, FewestResponses, "responses in sessions without drift, change or dependence"));
        }

        var different = sessions.SelectMany(session => session.Latencies.InOrder.ToArray()).Distinct().Take(FewestDifferent).Count();
        return different < FewestDifferent
            ? (null, new ShapeNotEnough(different, FewestDifferent, "different latencies"))
            : (new FittedCondition(sessions, ShapeChoice.Of([.. sessions.Select(Latencies)])), null);
    }

    private static SessionLatencies Latencies(SessionSample session) => new(session.Latencies.Sorted.ToArray(), session.ResolutionMs);
}
