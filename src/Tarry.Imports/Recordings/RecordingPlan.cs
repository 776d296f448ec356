using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Recordings;

/// <summary>Makes the plan of an import from a recording that holds one session.</summary>
internal sealed class RecordingPlan(RecordingTarget target, string fileName, string format)
{
    private const int LongestList = 1_000;
    private readonly List<Trial> trials = [];
    private readonly List<RefusedItem> refused = [];
    private readonly Dictionary<string, long> refusedByReason = new(StringComparer.Ordinal);
    private readonly List<string> events = [];
    private readonly List<string> notes = [];
    private readonly List<string> cautions = [];
    private long refusedTotal;
    private long unassigned;
    private RecordingDamage? damage;

    /// <summary>How the file was read, for the record.</summary>
    public SortedDictionary<string, string> Options { get; } = new(StringComparer.Ordinal);

    /// <summary>How many trials there are so far.</summary>
    public int Count => trials.Count;

    /// <summary>The sequence number of the next trial.</summary>
    public long NextSequence => trials.Count + 1;

    /// <summary>The first thing that was refused and how many there are, as a sentence to put behind another; empty where nothing was.</summary>
    public string FirstRefused => refused.Count == 0 ? "" : FormattableString.Invariant($" {refusedTotal} rows were refused; the first, {refused[0].Place}: {refused[0].Reason}");

    /// <summary>Adds a trial that is not refused.</summary>
    public void Add(Trial trial) => trials.Add(trial);

    /// <summary>Adds a press that stands as a refused trial.</summary>
    public void Refuse(long pressTicks, string place, string kind, string reason)
    {
        trials.Add(new Trial(NextSequence, 0, pressTicks, null, null, Outcome.Refused, TrialFlags.None, 0));
        Refuse(place, kind, reason);
    }

    /// <summary>Something for the user to know, in words.</summary>
    public void Note(string note) => notes.Add(note);

    /// <summary>Something that happened to the recording, in words; kept with the session.</summary>
    public void Event(string what)
    {
        events.Add(what);
        notes.Add(what);
    }

    /// <summary>Something that makes it doubtful that the recording was read as it was meant, in words; kept with the session.</summary>
    public void Caution(string what)
    {
        cautions.Add(what);
        Event(what);
    }

    /// <summary>Where the recording stopped making sense.</summary>
    public void StopAt(RecordingDamage at)
    {
        damage = at;
        Event(FormattableString.Invariant($"reading stopped at byte {at.Offset}: {at.Problem} What came before is kept"));
        RefuseUnassigned(FormattableString.Invariant($"{fileName} byte {at.Offset}"), "the file is damaged from there on", at.Problem);
    }

    /// <summary>Something that was refused and is no press.</summary>
    public void RefuseUnassigned(string place, string kind, string reason)
    {
        unassigned++;
        Refuse(place, kind, reason);
    }

    /// <summary>The plan.</summary>
    /// <param name="sha256">SHA-256 of the whole file.</param>
    /// <param name="tickHz">Ticks a second.</param>
    /// <param name="remedy">What to check where no press was found.</param>
    /// <exception cref="ImportException">Nothing could be kept.</exception>
    public ImportPlan Build(string sha256, long tickHz, string remedy)
    {
        var kept = trials.Count(trial => trial.Outcome != Outcome.Refused);
        if (kept == 0)
        {
            var why = trials.Count == 0 ? "No press was found."
                : $"None of the {trials.Count} presses could be kept: {string.Join("; ", refusedByReason.Select(pair => FormattableString.Invariant($"{pair.Key} ({pair.Value})")))}.";
            throw new ImportException(
                damage is null ? why : $"{why} {damage.Problem}",
                damage is null ? fileName : FormattableString.Invariant($"{fileName} byte {damage.Offset}"),
                remedy);
        }

        CautionOfPairing();
        var existing = target.Conditions.Any(condition => condition.Id == target.Session.Condition);
        var source = new SourceFile(fileName, sha256, format, Options, trials.Count + unassigned);
        var record = new SessionRecord
        {
            Key = target.Session,
            Segments = [new Segment(null, 1, tickHz, null)],
            Source = source,
            Refused = refused,
            RefusedTotal = refusedTotal,
            Events = events,
        };
        return new ImportPlan
        {
            Sessions = [(record, trials)],
            NewConditions = existing ? [] : [new ConditionEntry { Id = target.Session.Condition, Factors = new Dictionary<string, string>() }],
            Exclusions = [],
            Record = new ImportRecord
            {
                FileName = fileName,
                Sha256 = sha256,
                Format = format,
                Options = Options,
                RowsRead = source.RowsRead,
                RowsKept = kept,
                RefusedTotal = refusedTotal,
                RefusedByReason = refusedByReason,
                Refused = refused,
                RefusedUnassigned = unassigned,
            },
            Notes = notes,
            Cautions = cautions,
        };
    }

    private void CautionOfPairing()
    {
        var active = trials.Count(trial => trial.Flags.HasFlag(TrialFlags.LineActiveAtPress));
        if (2 * active > trials.Count)
        {
            Caution(FormattableString.Invariant(
                $"the response was active already at {active} of {trials.Count} presses: the channels may be swapped (--press-channel, --response-channel), or an edge be the wrong one (--press-edge, --response-edge)"));
        }

        if (trials.TrueForAll(trial => trial.Outcome is Outcome.Missed or Outcome.Refused))
        {
            Caution("no press was answered: check the response's channel, --response-edge and --max-latency-ms");
        }
    }

    private void Refuse(string place, string kind, string reason)
    {
        refusedTotal++;
        refusedByReason[kind] = refusedByReason.GetValueOrDefault(kind) + 1;
        if (refused.Count < LongestList)
        {
            refused.Add(new RefusedItem(place, reason));
        }
    }
}
