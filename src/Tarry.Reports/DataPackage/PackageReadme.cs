using System.Globalization;
using System.Text;
using Tarry.Findings.Quality;

namespace Tarry.Reports.DataPackage;

/// <summary>The README of a package, in Markdown.</summary>
internal static class PackageReadme
{
    public static string Write(DataPackageContent content, IReadOnlyList<TableColumn> columns)
    {
        var text = new StringBuilder();
        WriteWhat(text, content);
        WriteHow(text, content);
        WriteFiles(text, content);
        WriteColumns(text, content, columns);
        WriteReports(text, content);
        WriteRecheck(text, content);
        WriteCautions(text, content);
        WriteLicence(text, content.Licence);
        return text.ToString();
    }

    /// <summary>What it is about, in a sentence each.</summary>
    public static string What(DataPackageContent content) => string.Join(' ', new[]
    {
        content.HasTrials || !content.HasSticks ? "Input latency: how long it takes from a contact closing to its effect, measured trial by trial." : "",
        content.HasSticks ? "Analog sticks: how truly each says where it is, position by position." : "",
    }.Where(sentence => sentence.Length > 0));

    private static void WriteWhat(StringBuilder text, DataPackageContent content)
    {
        var counts = content.Findings.Counts;
        Line(text, $"# {content.Study.Title}");
        Line(text);
        Line(text, What(content));
        if (PackageSources.AreSimulated(content.AllSessions))
        {
            Line(text);
            Line(text, "**From a simulated bench with invented devices. Nothing here is about a real one.**");
        }

        Line(text);
        if (content.HasTrials || !content.HasSticks)
        {
            Line(text, $"{content.Findings.Conditions.Count} conditions, {content.Sessions.Count} sessions. Captured {counts.Captured} trials = used {counts.Used} + missed {counts.Missed} + early {counts.Early} + refused {counts.Refused} + excluded {counts.Excluded}; every trial is in exactly one.");
        }

        if (content.HasSticks)
        {
            var recordings = content.Recordings.Where(recording => recording.Session.Stick is not null).ToList();
            Line(text, $"Conditions with recordings of a stick: {recordings.Select(recording => recording.Key.Condition).Distinct().Count()}. Recordings: {recordings.Count}.");
        }

        if (!string.IsNullOrWhiteSpace(content.Author))
        {
            Line(text, $"By {content.Author.Trim()}.");
        }

        Line(text, $"Version {content.Version} of this publication, made with tarry {content.Findings.Version}.");
    }

    private static void WriteHow(StringBuilder text, DataPackageContent content)
    {
        Line(text);
        Line(text, "## How it was measured");
        Line(text);
        if (content.HasTrials || !content.HasSticks)
        {
            WriteHowLatency(text, content);
            Line(text);
        }

        if (content.HasSticks)
        {
            Line(text, $"A stick is recorded while one procedure is done with it. One procedure with one stick in one sitting is a session: the unit of inference here too, so values are means of session values. `{PackageFiles.StickRecordings}` lists the sessions, those that were set aside too (`excluded`), and `{PackageFiles.SticksFolder}/SESSION.csv` holds the positions of each: `time_us` from the session's beginning, `x` and `y` in counts as the source says them (right and up are greater), and where the true position is known `stimulus_deg`, or `stimulus_x` and `stimulus_y`. Findings are in per cent of half the range that an axis can say: 100 (count - middle) / (half the range).");
            Line(text);
        }

        Line(text, "Where the data came from:");
        foreach (var source in PackageSources.Of(content.AllSessions))
        {
            Line(text, $"- {source}");
        }
    }

    private static void WriteHowLatency(StringBuilder text, DataPackageContent content)
    {
        Line(text, "A rig closes a contact of the device at random intervals and times the response with its own counter. Several conditions are run in random order in one set-up of the bench, a sitting. One condition in one sitting is a session; the session, not the trial, is the unit of inference, so means are means of session means and intervals say what re-plugging and another day change.");
        Line(text);
        Line(text, content.Study.Reference is { } reference
            ? $"Differences are from the reference condition `{reference}`, within the sittings that both were run in: what the rest of the chain costs is in both and cancels."
            : "The study names no reference condition: latencies are of the whole chain, the host and the screen included.");
        Line(text, $"A difference below {content.Study.MarginMs.ToString(CultureInfo.InvariantCulture)} ms is taken not to matter (the margin of this study).");
    }

    private static void WriteFiles(StringBuilder text, DataPackageContent content)
    {
        Line(text);
        Line(text, "## Files");
        Line(text);
        Line(text, "| file | what |");
        Line(text, "|---|---|");
        Line(text, $"| `{DataPackageFolder.DescriptorName}` | Frictionless Data Package descriptor: columns, units, and length and SHA-256 of every other file. |");
        foreach (var (name, about) in PackageFiles.About.Concat(content.HasSticks ? PackageFiles.AboutSticks : []))
        {
            Line(text, $"| `{name}` | {about.What} |");
        }

        foreach (var kind in content.Recordings.GroupBy(recording => recording.Session.Stick is null))
        {
            // One row for all sessions of a kind: there may be hundreds.
            foreach (var name in kind.First().Names)
            {
                Line(text, $"| `{name.Replace(kind.First().Key.ToString(), "SESSION", StringComparison.Ordinal)}` | {PackageFiles.Describe(name).What} One file a session, {kind.Count()} in all. |");
            }
        }
    }

    private static void WriteReports(StringBuilder text, DataPackageContent content)
    {
        if (content.Recordings.All(recording => recording.Session.ReportStream is null))
        {
            return;
        }

        Line(text);
        Line(text, "## Reports");
        Line(text);
        Line(text, "What devices sent, and when it reached whoever recorded it: how often and how steadily they report. There is no press in them, so they are no latencies and enter no mean. Columns: `time_us` from the session's beginning, `endpoint`, `report_id`, `data` (the bytes, hexadecimal), and a column a field of the device's report descriptor; `datapackage.json` describes each.");
    }

    private static void WriteColumns(StringBuilder text, DataPackageContent content, IReadOnlyList<TableColumn> columns)
    {
        var sticks = content.HasSticks
            ? [(PackageFiles.StickRecordings, StickRecordingsSchema.Of(content.StickRecordingColumns, content.Study)), (StickFindingsTable.FileName, StickFindingsTable.Columns)]
            : Array.Empty<(string, IReadOnlyList<TableColumn>)>();
        foreach (var (name, table) in new[] { (PackageFiles.TrialsCsv, columns), (HeadlineTable.FileName, HeadlineTable.Columns) }.Concat(sticks))
        {
            Line(text);
            Line(text, $"## Columns of {name}");
            Line(text);
            Line(text, "| column | unit | meaning |");
            Line(text, "|---|---|---|");
            foreach (var column in table)
            {
                Line(text, $"| `{column.Name}` | {column.Unit} | {column.Description} |");
            }
        }
    }

    private static void WriteRecheck(StringBuilder text, DataPackageContent content)
    {
        Line(text);
        Line(text, "## How to recheck");
        if (content.HasTrials || !content.HasSticks)
        {
            WriteScripts(text, PackageFiles.RecheckR, PackageFiles.RecheckPython);
            Line(text, "prints the headline table from the trials: condition | mean (95 % interval) | less reference (95 % interval) | sessions | used trials. Few sessions know their own scatter poorly, so each variance is drawn towards what all conditions have in common; what is borrowed (a variance, a weight, degrees of freedom) stands in `headline.csv` and is all that the scripts take from there. The intervals are mean +- t sqrt((shared + weight x s^2) / J), with s the standard deviation of the J session values.");
            Line(text);
            Line(text, "The borrowed part itself is empirical Bayes (G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 3, 2004; `squeezeVar` of the R package limma).");
        }

        if (content.HasSticks)
        {
            WriteScripts(text, PackageFiles.RecheckSticksR, PackageFiles.RecheckSticksPython);
            Line(text, $"recomputes from the positions of sticks the centre offset, the noise at rest, the distinct steps, and of turns the circle of least squares and the radial deviation: condition | key | recomputed | published. From `{StickFindingsTable.FileName}` it takes what it prints as published and over how many sessions that goes, and nothing else. Intervals, and what the other procedures show, it does not recompute; the report has their formulas. The first needs R alone, the second NumPy and SciPy.");
        }

        Line(text);
        Line(text, "Whole files: `sha256sum` gives the digests in `datapackage.json`.");
    }

    private static void WriteScripts(StringBuilder text, string inR, string inPython)
    {
        Line(text);
        Line(text, "In this folder, either of");
        Line(text, "```");
        Line(text, $"Rscript {inR}");
        Line(text, $"python3 {inPython}");
        Line(text, "```");
    }

    private static void WriteCautions(StringBuilder text, DataPackageContent content)
    {
        var cautions = content.Findings.Conditions.SelectMany(condition => condition.Cautions).Concat(content.Findings.Cautions).ToList();
        if (cautions.Count == 0)
        {
            return;
        }

        Line(text);
        Line(text, "## Cautions");
        Line(text);
        foreach (var caution in cautions)
        {
            Line(text, $"- {CautionWording.Sentence(caution)}");
        }
    }

    private static void WriteLicence(StringBuilder text, Licence? licence)
    {
        Line(text);
        Line(text, "## Licence");
        Line(text);
        Line(text, licence switch
        {
            { Title: { } title, Address: { } address } => $"[{title}]({address}) ({licence.Id}).",
            { } => $"{licence.Id}.",
            null => "None is stated. Ask whoever published this before you use it again.",
        });
    }

    private static void Line(StringBuilder text, FormattableString line) => text.Append(FormattableString.Invariant(line)).Append('\n');

    private static void Line(StringBuilder text, string line = "") => text.Append(line).Append('\n');
}
