using Tarry.Studies.Disk;
using Tarry.Studies.Journals;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Checking;

/// <summary>Whether one session is consistent.</summary>
internal sealed class SessionInspection(Study study, Manifest manifest, SessionKey key, IReadOnlySet<string> unsound)
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

        return SessionFolders.IsSealed(_paths, manifest, key) ? Sealed() : Open();
    }

    private SessionCheck Sealed()
    {
        // A file that is known not to be what was sealed is told already, and not parsed.
        if (unsound.Contains(_paths.Relative(_paths.SessionFile(key))) && manifest.HashOf(_paths.Relative(_paths.SessionFile(key))) is not null
            || unsound.Contains(_paths.Relative(_paths.Trials(key))) && manifest.HashOf(_paths.Relative(_paths.Trials(key))) is not null)
        {
            return new SessionCheck(key, true, null, 0, _problems);
        }

        try
        {
            var (record, stated) = SealedSession.ReadRecord(_paths, manifest, key);
            var trials = SealedSession.ReadTrials(_paths, manifest, key);
            var counted = OutcomeCounts.Of(trials);
            if (stated != counted)
            {
                Add(
                    StudyProblemKind.CountsDisagree,
                    _paths.Relative(_paths.SessionFile(key)),
                    $"The counts of session {key} are not those of its trials: {stated?.ToString() ?? "none stated"}, but {counted}.",
                    "Bring the session back from a copy of the study.");
            }

            return Inspect(new SessionData(record, trials, Sealed: true), 0);
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
            return Inspect(new SessionData(reading.State.Record, reading.State.TrialsInOrder(), Sealed: false), reading.TornBytes);
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

    private SessionCheck Inspect(SessionData data, long tornBytes)
    {
        var place = _paths.Relative(data.Sealed ? _paths.Trials(key) : _paths.Journal(key));
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
