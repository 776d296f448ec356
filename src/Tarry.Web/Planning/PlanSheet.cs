using Tarry.Findings;
using Tarry.Findings.Plans;
using Tarry.Reports.Documents;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Planning;

/// <summary>A plan of a study with the order drawn for it.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Order">The order; empty where nothing reaches the goal and no number of sittings is given.</param>
/// <param name="Runs">What the commands of the order share.</param>
public sealed record PlanSheet(StudyPlan Plan, IReadOnlyList<OrderedSitting> Order, PlannedRuns Runs)
{
    /// <summary>Makes the plan and draws the order; null where the study has too few conditions for the goal.</summary>
    /// <param name="findings">The study's findings.</param>
    /// <param name="file">Its study file.</param>
    /// <param name="form">What is asked.</param>
    /// <param name="study">How the commands name the study.</param>
    public static PlanSheet? Of(FindingsDocument findings, StudyFile file, PlanForm form, string study)
    {
        ArgumentNullException.ThrowIfNull(form);
        var conditions = PlannedConditions.Of(file);
        if (conditions.Count < PlannedConditions.Needed(form.Request.Kind))
        {
            return null;
        }

        var plan = StudyPlanner.Of(findings, conditions, form.Request);
        return new PlanSheet(
            plan,
            (form.Sittings ?? plan.Advised?.Sittings) is { } sittings ? RunOrder.Draw(conditions, sittings, plan.SittingsDone, form.Seed) : [],
            new PlannedRuns(study, form.Port, form.Response, form.Trials ?? plan.Advised?.TrialsPerSession ?? StudyPlanner.FewestTrials));
    }

    /// <summary>Writes the order as <c>tarry plan --order</c> does.</summary>
    public void WriteTable(TextWriter writer) => OrderTable.Write(writer, Plan, Order, Runs);

    /// <summary>The order as <c>tarry plan --sheet</c> writes it.</summary>
    public string ToHtml() => OrderSheet.Write(Plan, Order, Runs);
}
