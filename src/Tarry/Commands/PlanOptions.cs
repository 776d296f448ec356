using System.CommandLine;
using System.Globalization;
using Tarry.Findings.Plans;
using Tarry.Output;

namespace Tarry.Commands;

/// <summary>The options that say what a plan is to reach, what scatter it reckons with and what bench time costs.</summary>
internal sealed class PlanOptions
{
    private readonly Option<double?> halfWidth = Positive("--half-width-ms", "Know the mean of every condition to this half-width (95 %).");
    private readonly Option<double?> difference = Positive("--difference-ms", "Tell a difference of this size between any two conditions. [default: the study's margin]");
    private readonly Option<double?> equivalent = Positive("--equivalent-within-ms", "Show that conditions which are equal differ by less than this.");
    private readonly Option<double> power = new Option<double>("--power") { Description = "How likely the plan reaches its goal.", DefaultValueFactory = _ => 0.8 }.TakesNumber(positive: true);
    private readonly Option<double?> sessionSd = new Option<double?>("--session-sd-ms") { Description = $"Standard deviation between sessions. [default: as measured, else {Shown(StudyPlanner.DefaultSessionSdMs)}]" }.TakesNumber();
    private readonly Option<double?> trialSd = Positive("--trial-sd-ms", $"Standard deviation of a trial within its session. [default: as measured, else {Shown(StudyPlanner.DefaultTrialSdMs)}]");
    private readonly Option<double> perSitting = Cost("--minutes-per-sitting", "Minutes to set the bench up and take it apart.", PlanCosts.Default.MinutesPerSitting);
    private readonly Option<double> perCondition = Cost("--minutes-per-condition", "Minutes to change to the next condition.", PlanCosts.Default.MinutesPerCondition);
    private readonly Option<double> perPress = Cost("--seconds-per-press", "Seconds from press to press.", PlanCosts.Default.SecondsPerPress);

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { halfWidth, difference, equivalent, power, sessionSd, trialSd, perSitting, perCondition, perPress })
        {
            command.Add(option);
        }
    }

    public PlanRequest Read(ParseResult parsed)
    {
        var goals = new[] { (halfWidth, PlanGoalKind.HalfWidth), (difference, PlanGoalKind.Difference), (equivalent, PlanGoalKind.Equivalence) }
            .Where(goal => parsed.GetValue(goal.Item1) is not null)
            .ToList();
        if (goals.Count > 1)
        {
            throw new UsageException(
                $"A plan has one goal, and {string.Join(" and ", goals.Select(goal => goal.Item1.Name))} are two.",
                "Give one of --half-width-ms, --difference-ms and --equivalent-within-ms.");
        }

        if (parsed.GetValue(power) is not (>= 0.5 and < 1))
        {
            throw new UsageException($"--power is {Shown(parsed.GetValue(power))}; it lies from 0.5 to below 1.", "Give 0.8 or 0.9.");
        }

        if (parsed.GetValue(sessionSd) < 0)
        {
            throw new UsageException($"--session-sd-ms is {Shown(parsed.GetValue(sessionSd)!.Value)}; a standard deviation is 0 or more.", "Give 0.2, say.");
        }

        return new PlanRequest
        {
            Kind = goals.Count == 0 ? PlanGoalKind.Difference : goals[0].Item2,
            Ms = goals.Count == 0 ? null : parsed.GetValue(goals[0].Item1),
            Assurance = parsed.GetValue(power),
            SessionSdMs = parsed.GetValue(sessionSd),
            TrialSdMs = parsed.GetValue(trialSd),
            Costs = new PlanCosts(parsed.GetValue(perSitting), parsed.GetValue(perCondition), parsed.GetValue(perPress)),
        };
    }

    private static Option<double?> Positive(string name, string description) => new Option<double?>(name) { Description = description }.TakesNumber(positive: true);

    private static Option<double> Cost(string name, string description, double usual) =>
        new Option<double>(name) { Description = description, DefaultValueFactory = _ => usual }.TakesNumber(positive: true);

    private static string Shown(double number) => number.ToString(CultureInfo.InvariantCulture);
}
