using Tarry.Studies.StudyFiles;

namespace Tarry.Reports.DataPackage;

/// <summary>The columns of the published trials: those of <c>docs/formats/long-form-csv.md</c>.</summary>
internal static class TrialsSchema
{
    public static readonly IReadOnlyList<string> PrimaryKey = ["condition", "sitting", "seq"];

    private const string NameForm = "lower-case letters, digits, '-' and '_'";

    private static readonly TableColumn[] Always =
    [
        new("condition", "string", $"What was tested ({NameForm}).", Required: true),
        new("sitting", "string", $"The set-up of the bench, from plugging in to taking apart ({NameForm}). One condition in one sitting is a session, the unit of inference.", Required: true),
        new("seq", "integer", "Number of the trial in its session.", Required: true, Minimum: 1),
        new("press_time_us", "number", "When the contact closed, on the fitted clock of the rig; it begins anew where the rig restarted.", "us", Minimum: 0),
        new("latency_us", "number", "From the contact closing to the response, on the fitted clock of the rig; for an axis from the crossing of its stated threshold, so that it may be below 0. Empty where there is none.", "us"),
        new("outcome", "string", "What came of the trial: a response; missed, nothing before the time-out; early, a response before it was physically possible; refused, a bad frame or row that stands for a trial.", Required: true, Levels: ["response", "missed", "early", "refused"]),
        new("latency_high_us", "number", "Upper bound, only where the latency is known as an interval that begins at latency_us.", "us"),
        new("flags", "integer", "Bit mask: 1 bounced, 2 line active at press, 4 stray edge before, 8 waited for the host.", Minimum: 0, Maximum: 255),
        new("edges", "integer", "Response edges seen, 255 at most.", Minimum: 0, Maximum: 255),
        new("excluded", "integer", "1 if the tester set the trial aside (the reasons are in findings.json), else 0.", Required: true, Minimum: 0, Maximum: 1),
    ];

    /// <summary>The columns, given what the study declares and the header that the file has.</summary>
    /// <param name="header">The names in the file's first line, in order.</param>
    /// <param name="study">The study file.</param>
    public static IReadOnlyList<TableColumn> Of(IReadOnlyList<string> header, StudyFile study) =>
        [.. Always, .. FactorSchema.Of(header.Skip(Always.Length), study)];
}
