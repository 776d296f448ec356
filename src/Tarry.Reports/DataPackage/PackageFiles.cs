namespace Tarry.Reports.DataPackage;

/// <summary>The files of a package beside its descriptor.</summary>
internal static class PackageFiles
{
    public const string TrialsCsv = "trials.csv";
    public const string TrialsParquet = "trials.parquet";
    public const string Findings = "findings.json";
    public const string FindingsSchema = "findings.schema.json";
    public const string RecheckR = "recheck.R";
    public const string RecheckPython = "recheck.py";
    public const string Readme = "README.md";
    public const string StickRecordings = "stick-recordings.csv";
    public const string RecheckSticksR = "recheck-sticks.R";
    public const string RecheckSticksPython = "recheck-sticks.py";

    /// <summary>The folder of the sessions of reports.</summary>
    public const string ReportsFolder = "reports";

    /// <summary>The folder of the sessions of sticks.</summary>
    public const string SticksFolder = "sticks";

    /// <summary>What each file that every package has is, and its media type.</summary>
    public static readonly IReadOnlyDictionary<string, (string What, string MediaType)> About = new Dictionary<string, (string, string)>
    {
        [TrialsCsv] = ("Every trial, one a row.", "text/csv"),
        [TrialsParquet] = ("The same rows and numbers as Parquet; what is empty in the CSV is null.", "application/vnd.apache.parquet"),
        [HeadlineTable.FileName] = ("The headline table, and what its intervals were made from.", "text/csv"),
        [Findings] = ("All findings: estimates with intervals, differences, verdicts, ranking, cautions, counts.", "application/json"),
        [FindingsSchema] = ("JSON Schema of findings.json.", "application/schema+json"),
        [RecheckR] = ("Recomputes the headline table from trials.csv, with base R.", "text/x-r"),
        [RecheckPython] = ("Recomputes the headline table from trials.csv, with the standard library of Python.", "text/x-python"),
        [Readme] = ("What this is, for people.", "text/markdown"),
    };

    /// <summary>The same of those that a package with sticks has besides.</summary>
    public static readonly IReadOnlyDictionary<string, (string What, string MediaType)> AboutSticks = new Dictionary<string, (string, string)>
    {
        [StickRecordings] = ("The recordings of sticks, one a row: what was done, range, step and stimulus, where each came from, and which are set aside.", "text/csv"),
        [StickFindingsTable.FileName] = ("What the recordings say, one measure of one part of a stick a row.", "text/csv"),
        [RecheckSticksR] = ("Recomputes values of sticks from their positions, with base R.", "text/x-r"),
        [RecheckSticksPython] = ("Recomputes values of sticks from their positions, with NumPy and SciPy.", "text/x-python"),
    };

    /// <summary>What a file is, and its media type; of a session of reports or of a stick too.</summary>
    public static (string What, string MediaType) Describe(string name) =>
        About.TryGetValue(name, out var about) || AboutSticks.TryGetValue(name, out about) ? about
        : Path.GetExtension(name) switch
        {
            ".csv" when IsOfStick(name) => ("The positions of a stick in one recording, one a row.", "text/csv"),
            ".csv" => ("The reports of a session, one a row: what the device sent, no latencies.", "text/csv"),
            ".parquet" => ("The same rows and numbers as Parquet.", "application/vnd.apache.parquet"),
            _ when IsOfStick(name) => ("The record of that recording: procedure, ranges, clock, source, and what happened.", "application/json"),
            _ => ("The record of that session: device, endpoints, fields, source, and what happened.", "application/json"),
        };

    /// <summary>The text of a file that every package has alike.</summary>
    public static string Shipped(string name)
    {
        using var reader = new StreamReader(typeof(PackageFiles).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static bool IsOfStick(string name) => name.StartsWith(SticksFolder + "/", StringComparison.Ordinal);
}
