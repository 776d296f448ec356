using System.Globalization;
using Tarry.Studies.Disk;
using Tarry.Studies.Journals;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Checking;

/// <summary>Whether one session is consistent.</summary>
internal sealed class SessionInspection(Study study, SessionFolders folders, SessionKey key, IReadOnlySet<string> unsound)
{
    private readonly List<StudyProblem> _problems = [];
    private readonly StudyPaths _paths = study.Paths;

    public SessionCheck Run()
    {
        if (study.File.Conditions.All(condition => condition.Id != key.Condition))
        {
            Add(
                StudyProblemKind.ConditionNotDeclared,
                _paths.Relative(_paths.Session(key)),
                $"Session {key} is of the condition '{key.Condition}', which the study file does not declare.",
                $"Declare it with: tarry condition STUDY {key.Condition}");
        }

        return folders.Current(key) is not { } entry ? Open() : folders.KindOf(key) switch
        {
            SessionDocument.StickKind => SealedStick(entry),
            SessionDocument.ReportsKind => SealedReports(entry),
            _ => Sealed(entry),
        };
    }

    private SessionCheck Sealed(SessionEntry entry)
    {
        if (File.Exists(_paths.Journal(key)) && !SealedJournal.Agrees(_paths, folders.Manifest, key))
        {
            var journal = _paths.Relative(_paths.Journal(key));
            Add(
                StudyProblemKind.JournalDamaged,
                journal,
                $"{journal} stands beside the sealed session and does not agree with it.",
                "Keep a copy of the journal elsewhere, then remove it from the study.");
        }

        // A file that is known not to be what was sealed is told already, and not parsed.
        string[] files = [_paths.Relative(_paths.SessionFile(entry)), _paths.Relative(_paths.Trials(entry))];
        if (files.Any(file => unsound.Contains(file) && folders.Manifest.HashOf(file) is not null))
        {
            return new SessionCheck(key, true, null, 0, _problems);
        }

        try
        {
            var (record, document) = SealedSession.ReadRecord(_paths, folders.Manifest, entry);
            var stated = document.Counts;
            var trials = SealedSession.ReadTrials(_paths, folders.Manifest, entry);
            var counted = OutcomeCounts.Of(trials);
            if (stated != counted)
            {
                Add(
                    StudyProblemKind.CountsDisagree,
                    files[0],
                    $"The counts of session {key} are not those of its trials: {stated?.ToString() ?? "none stated"}, but {counted}.",
                    "Bring the session back from a copy of the study.");
            }

            return Inspect(new SessionData(record, trials, Sealed: true), files[1], 0);
        }
        catch (StudyException exception)
        {
            Add(StudyProblemKind.FileUnreadable, exception.Place ?? key.ToString(), exception.Message, exception.Remedy);
            return new SessionCheck(key, true, null, 0, _problems);
        }
    }

    private SessionCheck SealedReports(SessionEntry entry)
    {
        string[] files = [_paths.Relative(_paths.SessionFile(entry)), _paths.Relative(_paths.Reports(entry))];
        if (files.Any(file => unsound.Contains(file) && folders.Manifest.HashOf(file) is not null))
        {
            return new SessionCheck(key, true, null, 0, _problems);
        }

        try
        {
            var (session, stated, disagreement) = Sealing.SealedReports.Check(_paths, folders.Manifest, entry);
            if (stated != session.Reports.Count)
            {
                Add(
                    StudyProblemKind.CountsDisagree,
                    files[0],
                    $"Session {key} states {stated?.ToString(CultureInfo.InvariantCulture) ?? "no number of"} reports, and has {session.Reports.Count}.",
                    "Bring the session back from a copy of the study.");
            }

            if (disagreement is not null)
            {
                Add(
                    StudyProblemKind.ReportsDisagree,
                    files[1],
                    $"Session {key}: {disagreement}.",
                    "Bring the session back from a copy of the study, or import its file again.");
            }

            return new SessionCheck(key, true, null, 0, _problems) { Reports = session.Reports.Count };
        }
        catch (StudyException exception)
        {
            Add(StudyProblemKind.FileUnreadable, exception.Place ?? key.ToString(), exception.Message, exception.Remedy);
            return new SessionCheck(key, true, null, 0, _problems);
        }
    }

    private SessionCheck SealedStick(SessionEntry entry)
    {
        string[] files = [_paths.Relative(_paths.SessionFile(entry)), _paths.Relative(_paths.Reports(entry))];
        if (files.Any(file => unsound.Contains(file) && folders.Manifest.HashOf(file) is not null))
        {
            return new SessionCheck(key, true, null, 0, _problems);
        }

        try
        {
            var session = Sealing.SealedStick.Read(_paths, folders.Manifest, entry);
            return new SessionCheck(key, true, null, 0, _problems) { Positions = session.Samples.Count };
        }
        catch (StudyException exception)
        {
            Add(StudyProblemKind.FileUnreadable, exception.Place ?? key.ToString(), exception.Message, exception.Remedy);
            return new SessionCheck(key, true, null, 0, _problems);
        }
    }

    private SessionCheck Open()
    {
        try
        {
            var reading = JournalReader.Read(_paths, key);
            return Inspect(new SessionData(reading.State.Record, reading.State.TrialsInOrder(), Sealed: false), _paths.Relative(_paths.Journal(key)), reading.TornBytes);
        }
        catch (StudyException exception)
        {
            Add(StudyProblemKind.JournalDamaged, exception.Place ?? key.ToString(), exception.Message, exception.Remedy);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            Add(StudyProblemKind.FileUnreadable, _paths.Relative(_paths.Journal(key)), exception.Message, "Check the disk and who may read it.");
        }

        return new SessionCheck(key, false, null, 0, _problems);
    }

    private SessionCheck Inspect(SessionData data, string place, long tornBytes)
    {
        var broken = new Occurrences();
        var backwards = new Occurrences();
        Trial? before = null;
        foreach (var trial in data.Trials)
        {
            var rule = TrialRules.Broken(trial, data.Record.Segments.Count)
                ?? (trial.Sequence <= before?.Sequence ? "the sequence number does not follow the one before" : null);
            if (rule is not null)
            {
                broken.Note(trial, rule);
            }

            if (before is { } earlier && earlier.Segment == trial.Segment && trial.PressTicks < earlier.PressTicks)
            {
                backwards.Note(trial, $"it was pressed before trial {earlier.Sequence}");
            }

            before = trial;
        }

        Add(StudyProblemKind.TrialBroken, place, broken, "Set such trials aside with an [[exclude]] and its reason.");
        Add(
            StudyProblemKind.PressTimesNotAscending,
            place,
            backwards,
            "The tick counter or the order of the rows is wrong: import again with the right options, or set the session aside with an [[exclude]].");
        return new SessionCheck(key, data.Sealed, SessionTally.Of(data, study.File.Exclusions), tornBytes, _problems);
    }

    private void Add(StudyProblemKind kind, string place, Occurrences found, string remedy)
    {
        if (found.First is { } first)
        {
            var more = found.Count > 1 ? $" (and {found.Count - 1} more trials)" : "";
            Add(kind, $"{place} seq {first.Sequence}", $"Trial {first.Sequence} of session {key}: {found.What}{more}.", remedy);
        }
    }

    private void Add(StudyProblemKind kind, string place, string message, string remedy) => _problems.Add(new(kind, place, message, remedy));

    /// <summary>The first trial with a fault, and how many have it: a long list would hide the other problems.</summary>
    private sealed class Occurrences
    {
        public Trial? First { get; private set; }

        public string What { get; private set; } = "";

        public long Count { get; private set; }

        public void Note(Trial trial, string what)
        {
            if (Count++ == 0)
            {
                (First, What) = (trial, what);
            }
        }
    }
}
