using System.Globalization;
using Tarry.Findings.Plans;

namespace Tarry.Web.Planning;

/// <summary>What is asked of a plan, as the address holds it: values by their names, blank where the usual one is taken.</summary>
public sealed class PlanForm
{
    private const int MostSittings = 1000;
    private const int MostTrials = 10_000_000;
    private static readonly string[] Responses = ["light", "edge", "echo"];
    private readonly IReadOnlyDictionary<string, string> values;
    private readonly Dictionary<string, string> problems = new(StringComparer.Ordinal);

    /// <summary>Reads what an address holds; what is wrong is among the problems, and the usual value is taken in its place.</summary>
    /// <param name="values">The values by name; others than <see cref="Names"/> are passed over.</param>
    public PlanForm(IReadOnlyDictionary<string, string> values)
    {
        this.values = values;
        Request = new PlanRequest
        {
            Kind = this["goal"] switch { "half-width" => PlanGoalKind.HalfWidth, "equivalence" => PlanGoalKind.Equivalence, _ => PlanGoalKind.Difference },
            Ms = Positive("ms"),
            Assurance = Between("power", 0.5, 1) ?? new PlanRequest { Kind = PlanGoalKind.Difference }.Assurance,
            SessionSdMs = Number("session-sd", number => number >= 0, "0 or more"),
            TrialSdMs = Positive("trial-sd"),
            Costs = new PlanCosts(
                Positive("sitting-min") ?? PlanCosts.Default.MinutesPerSitting,
                Positive("condition-min") ?? PlanCosts.Default.MinutesPerCondition,
                Positive("press-s") ?? PlanCosts.Default.SecondsPerPress),
        };
        Sittings = Whole("sittings", MostSittings);
        Trials = Whole("trials", MostTrials);
        Seed = (uint)(Whole("seed", int.MaxValue) ?? 1);
        Response = Responses.Contains(this["response"]) ? this["response"]! : Responses[0];
        Port = this["port"] is { } port && !port.Any(char.IsControl) ? port : "PORT";
    }

    /// <summary>The names of its values in an address.</summary>
    public static IReadOnlyList<string> Names { get; } =
        ["goal", "ms", "power", "session-sd", "trial-sd", "sitting-min", "condition-min", "press-s", "sittings", "trials", "seed", "port", "response"];

    /// <summary>What is asked.</summary>
    public PlanRequest Request { get; }

    /// <summary>Sittings to draw the order for; null for those advised.</summary>
    public int? Sittings { get; }

    /// <summary>Trials in each session; null for those advised.</summary>
    public int? Trials { get; }

    /// <summary>The seed of the order.</summary>
    public uint Seed { get; }

    /// <summary>The rig's port, for the commands.</summary>
    public string Port { get; }

    /// <summary>What answers, for the commands.</summary>
    public string Response { get; }

    /// <summary>What is wrong, by name.</summary>
    public IReadOnlyDictionary<string, string> Problems => problems;

    /// <summary>A value as it was entered; null where it is blank.</summary>
    public string? this[string name] => values.GetValueOrDefault(name) is { } value && !string.IsNullOrWhiteSpace(value) ? value.Trim() : null;

    private double? Positive(string name) => Number(name, number => number > 0, "more than 0");

    private double? Between(string name, double low, double high) =>
        Number(name, number => number >= low && number < high, string.Create(CultureInfo.InvariantCulture, $"from {low} to below {high}"));

    private double? Number(string name, Func<double, bool> isAllowed, string range)
    {
        if (this[name] is not { } text)
        {
            return null;
        }

        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) && isAllowed(number))
        {
            return number;
        }

        problems[name] = $"Give a number {range}, with a decimal point; or leave it empty.";
        return null;
    }

    private int? Whole(string name, int most)
    {
        if (this[name] is not { } text)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= most)
        {
            return number;
        }

        problems[name] = $"Give a whole number from 1 to {most.ToString("N0", CultureInfo.InvariantCulture)}, or leave it empty.";
        return null;
    }
}
