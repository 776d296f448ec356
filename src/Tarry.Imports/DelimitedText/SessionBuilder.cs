using System.Runtime.InteropServices;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports.DelimitedText;

/// <summary>Gathers the rows of one session and makes its trials.</summary>
internal sealed class SessionBuilder(SessionKey key, bool numbered)
{
    private const int LongestList = 1_000;
    private const long NanosecondHz = 1_000_000_000;
    private const long MicrosecondHz = 1_000_000;
    private readonly List<ImportedRow> rows = [];
    private readonly List<RefusedItem> refused = [];
    private HashSet<long>? seen;
    private long highest = -1;
    private long refusedTotal;
    private bool outOfOrder;
    private bool finerThanMicroseconds;

    /// <summary>Adds a row, or refuses it where its number is taken.</summary>
    public RowRefusal? Add(ImportedRow row)
    {
        if (!TakeSequence(ref row))
        {
            return new RowRefusal(RowProblem.DuplicateSequence, $"the sequence number {row.Sequence} is in {key} already");
        }

        Keep(row);
        return null;
    }

    /// <summary>Adds a refused row as a refused trial: without its latency, and without its own number where that is taken or bad.</summary>
    public void AddRefused(ImportedRow row, RefusedItem why)
    {
        row.Outcome = Outcome.Refused;
        row.LatencyNanoseconds = row.LatencyHighNanoseconds = ImportedRow.Unknown;
        refusedTotal++;
        if (refused.Count < LongestList)
        {
            refused.Add(why);
        }

        if ((row.Sequence == ImportedRow.Unnumbered && numbered) || !TakeSequence(ref row))
        {
            row.Sequence = ImportedRow.Unnumbered;
            outOfOrder = true;
        }

        Keep(row);
    }

    /// <summary>The session, its trials in order of sequence.</summary>
    public (SessionRecord Record, IReadOnlyList<Trial> Trials) Build(SourceFile source)
    {
        var events = new List<string>();
        var all = CollectionsMarshal.AsSpan(rows);
        NumberFromOne(all, events);
        if (outOfOrder)
        {
            rows.Sort((left, right) => left.Sequence.CompareTo(right.Sequence));
        }

        var tickHz = finerThanMicroseconds ? NanosecondHz : MicrosecondHz;
        var segments = new List<Segment> { new(null, all[0].Sequence, tickHz, null) };
        var trials = new Trial[all.Length];
        var press = ImportedRow.Unknown;
        for (var index = 0; index < trials.Length; index++)
        {
            ref readonly var row = ref all[index];
            if (row.PressNanoseconds != ImportedRow.Unknown)
            {
                if (row.PressNanoseconds < press)
                {
                    segments.Add(new Segment(null, row.Sequence, tickHz, null));
                    events.Add($"the press clock went back at line {row.Line}: a new segment begins with seq {row.Sequence}");
                }

                press = row.PressNanoseconds;
            }

            trials[index] = ToTrial(row, segments.Count - 1, NanosecondHz / tickHz);
        }

        var record = new SessionRecord { Key = key, Segments = segments, Source = source, Refused = refused, RefusedTotal = refusedTotal, Events = events };
        return (record, trials);
    }

    /// <summary>The trials that the file marks as excluded, in stretches; after <see cref="Build"/>.</summary>
    public IEnumerable<Exclusion> Exclusions(string fileName)
    {
        long? first = null;
        for (var index = 0; index < rows.Count; index++)
        {
            if (rows[index].Excluded)
            {
                first ??= rows[index].Sequence;
                if (index + 1 == rows.Count || !rows[index + 1].Excluded)
                {
                    yield return new Exclusion(key, $"marked as excluded in {fileName}", first, rows[index].Sequence);
                    first = null;
                }
            }
        }
    }

    /// <summary>Gives the rows up, so that a large file is not held twice.</summary>
    public void Release()
    {
        rows.Clear();
        rows.TrimExcess();
    }

    private static Trial ToTrial(in ImportedRow row, int segment, long nanosecondsPerTick) => new(
        row.Sequence,
        segment,
        Ticks(row.PressNanoseconds, nanosecondsPerTick),
        Ticks(row.LatencyNanoseconds, nanosecondsPerTick),
        Ticks(row.LatencyHighNanoseconds, nanosecondsPerTick),
        row.Outcome,
        row.Flags,
        row.Edges);

    private static long? Ticks(long nanoseconds, long nanosecondsPerTick) =>
        nanoseconds == ImportedRow.Unknown ? null : nanoseconds / nanosecondsPerTick;

    private static bool IsFiner(long nanoseconds) => nanoseconds != ImportedRow.Unknown && nanoseconds % 1_000 != 0;

    private void Keep(in ImportedRow row)
    {
        finerThanMicroseconds |= IsFiner(row.PressNanoseconds) || IsFiner(row.LatencyNanoseconds) || IsFiner(row.LatencyHighNanoseconds);
        rows.Add(row);
    }

    /// <summary>A set of numbers is needed only once they stop ascending.</summary>
    private bool TakeSequence(ref ImportedRow row)
    {
        if (!numbered)
        {
            row.Sequence = rows.Count + 1;
        }

        if (row.Sequence > highest)
        {
            highest = row.Sequence;
            return seen?.Add(row.Sequence) ?? true;
        }

        seen ??= [.. rows.Select(kept => kept.Sequence)];
        outOfOrder = true;
        return seen.Add(row.Sequence);
    }

    private void NumberFromOne(Span<ImportedRow> all, List<string> events)
    {
        var shift = 0;
        var unnumbered = 0;
        foreach (ref readonly var row in all)
        {
            shift = row.Sequence == 0 ? 1 : shift;
            unnumbered += row.Sequence == ImportedRow.Unnumbered ? 1 : 0;
        }

        var next = Math.Max(highest, 0) + shift + 1;
        if (shift > 0)
        {
            events.Add("the file numbers from 0; every seq is one more here");
        }

        if (unnumbered > 0)
        {
            events.Add($"{unnumbered} refused rows without a usable number of their own are numbered from {next}");
        }

        foreach (ref var row in all)
        {
            row.Sequence = row.Sequence == ImportedRow.Unnumbered ? next++ : row.Sequence + shift;
        }
    }
}
