using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Reports.DataPackage;

/// <summary>The columns of the published table of a study's recordings of sticks, one row a session.</summary>
internal static class StickRecordingsSchema
{
    public static readonly IReadOnlyList<string> PrimaryKey = ["session"];

    private static readonly TableColumn[] Always =
    [
        new("session", "string", $"The recording: sitting.condition.procedure. Its positions are in {PackageFiles.SticksFolder}/SESSION.csv.", Required: true),
        new("condition", "string", "What was tested.", Required: true),
        new("sitting", "string", "The set-up of the bench, from plugging in to taking apart.", Required: true),
        new("procedure", "string", "What was done with the stick.", Required: true, Levels: StickProcedures.Names),
        new("source", "string", "Where the positions come from: the rig's converter at the wipers, the host's input events, a device's reports, or a table.", Required: true, Levels: [StickSetup.FromRig, StickSetup.FromHostEvents, StickSetup.FromReports, StickSetup.FromCsv]),
        new("positions", "integer", "How many positions.", Required: true, Minimum: 1),
        new("duration_s", "number", "From the first to the last.", "s", Required: true, Minimum: 0),
        new("rate_hz", "number", "Positions a second: the inverse of the median time between two.", "Hz", Minimum: 0),
        .. Range("x"),
        .. Range("y"),
        new("stimulus", "string", "What is known of the true position: nothing, the angle of a stop, or the voltage that stands for a wiper.", Required: true, Levels: ["none", "angle", "level"]),
        new("stimulus_unit", "string", "Its unit, in the positions' table and of its uncertainty: degrees, or a share of the supply.", Levels: ["deg", "share"]),
        new("stimulus_uncertainty", "number", "Its standard uncertainty as the tester states it, in stimulus_unit; empty where not stated.", Minimum: 0),
        new("refused", "integer", "Rows, reports or readings that could not be kept; the session's record names the first 1,000.", Required: true, Minimum: 0),
        new("file_name", "string", "The file that it was taken in from; empty where there is none."),
        new("file_sha256", "string", "The SHA-256 of that file, lower-case hexadecimal."),
        new("excluded", "integer", "1 if the tester set the recording aside, so that no finding rests on it, else 0.", Required: true, Minimum: 0, Maximum: 1),
        new("excluded_reason", "string", "Why it was set aside."),
    ];

    /// <summary>The columns, given what the study declares and the header that the file has.</summary>
    /// <param name="header">The names in the file's first line, in order.</param>
    /// <param name="study">The study file.</param>
    public static IReadOnlyList<TableColumn> Of(IReadOnlyList<string> header, StudyFile study) =>
        [.. Always, .. FactorSchema.Of([.. header.Skip(Always.Length)], study)];

    private static TableColumn[] Range(string axis) =>
    [
        new($"{axis}_minimum", "number", $"The least that {axis} can say.", "counts", Required: true),
        new($"{axis}_maximum", "number", $"The greatest that {axis} can say.", "counts", Required: true),
        new($"{axis}_step", "number", $"The stated step between neighbouring positions along {axis}; empty where none is stated.", "counts", Minimum: 0),
    ];
}
