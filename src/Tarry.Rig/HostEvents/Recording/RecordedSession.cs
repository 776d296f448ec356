using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.HostEvents.Recording;

/// <summary>From a recording to a session of the kind <c>reports</c>. A recording that was cut off by a crash gives what it holds.</summary>
public static class RecordedSession
{
    private const long NanosecondsPerSecond = 1_000_000_000;
    private const int MostRefusedInWords = 1000;

    /// <summary>What the axes of a recording can say; none where it holds reports' bytes.</summary>
    /// <exception cref="HostInputException">It is no recording.</exception>
    public static IReadOnlyList<RecordedAxis> AxesOf(string path) => HeaderOf(path, File.ReadLines(path).FirstOrDefault() ?? "").Axes;

    /// <summary>The levels that the rig set meanwhile: the stamps before and after, from the first report on, and the level in 1/65535.</summary>
    public static IReadOnlyList<(long Before, long After, int Level)> LevelsOf(string path)
    {
        var lines = File.ReadAllText(path).Split('\n');
        var (reports, _, _) = ReadLines(lines);
        var first = reports.Count == 0 ? 0 : Enumerable.Range(0, reports.Count).Min(reports.Tick);
        return
        [
            .. lines[..^1].Select(LevelIn).OfType<(long Before, long After, int Level)>().Select(level => (level.Before - first, level.After - first, level.Level)),
        ];
    }

    /// <summary>Reads a recording.</summary>
    /// <param name="path">The file.</param>
    /// <param name="key">The session that it becomes.</param>
    /// <param name="fieldsOf">Fields of a report descriptor's reports, and whether the first byte of a report is its id.</param>
    /// <exception cref="HostInputException">It is no recording, or holds no report.</exception>
    public static (ReportSession Session, ImportRecord Import) Read(
        string path, SessionKey key, Func<ReadOnlyMemory<byte>, (IReadOnlyList<ReportField> Fields, bool IdIsFirstByte)> fieldsOf)
    {
        ArgumentNullException.ThrowIfNull(fieldsOf);
        var content = File.ReadAllBytes(path);
        var lines = Encoding.UTF8.GetString(content).Split('\n');
        var header = HeaderOf(path, lines[0]);
        var (reports, events, refused) = ReadLines(lines);
        if (reports.Count == 0)
        {
            throw new HostInputException($"{path} holds no report.", "Move the device while it is recorded; remove the file, and record again.");
        }

        var first = Enumerable.Range(0, reports.Count).Min(reports.Tick);
        var (fields, idIsFirstByte) = Fields(header, fieldsOf);
        var log = reports.Select(_ => true, tick => tick - first);
        var name = Path.GetFileName(path);
        var hash = Convert.ToHexStringLower(SHA256.HashData(content));
        var options = new Dictionary<string, string> { ["clock"] = header.Clock };
        var rows = lines.Length - 2L;
        var record = new SessionRecord
        {
            Key = key,
            Segments = [new Segment(null, 1, NanosecondsPerSecond, null)],
            Source = new SourceFile(name, hash, "host-recording", options, rows),
            Events = [$"recorded by this host; stamps: {header.Clock}", .. Damage(header), .. events, .. reports.IsInOrder ? [] : new[] { "stamps went back: the reports were put in order of their stamps" }],
            Refused = [.. refused.Take(MostRefusedInWords)],
            RefusedTotal = refused.Count,
            ReportStream = new ReportStream
            {
                Device = header.Device,
                ProductId = header.ProductId,
                Endpoints = [new ReportEndpoint { Number = 0, Transport = header.Transport, ReportIdIsFirstByte = idIsFirstByte, ReportDescriptor = Descriptor(header) is null ? null : header.ReportDescriptor }],
                Fields = fields,
            },
        };
        return (new ReportSession(record, log), new ImportRecord
        {
            FileName = name,
            Sha256 = hash,
            Format = "host-recording",
            Options = options,
            RowsRead = rows,
            RowsKept = reports.Count + events.Count,
            RefusedTotal = refused.Count,
            RefusedByReason = refused.GroupBy(item => item.Reason).ToDictionary(group => group.Key, group => (long)group.Count()),
            Refused = record.Refused,
        });
    }

    private static RecordingHeader HeaderOf(string path, string line) =>
        RecordingHeader.Read(line) ?? throw new HostInputException($"{path} is no recording of the host's input.", "Remove it, and record again.");

    private static (IReadOnlyList<ReportField> Fields, bool IdIsFirstByte) Fields(
        RecordingHeader header, Func<ReadOnlyMemory<byte>, (IReadOnlyList<ReportField> Fields, bool IdIsFirstByte)> fieldsOf) =>
        header.Codes.Count > 0 ? ([.. header.Codes.SelectMany((text, index) => RecordedCode.Read(text) is { } code ? new[] { code.Field(index) } : [])], false)
        : Descriptor(header) is { } descriptor ? fieldsOf(descriptor)
        : ([], false);

    private static byte[]? Descriptor(RecordingHeader header)
    {
        var bytes = new byte[(header.ReportDescriptor?.Length ?? 0) / 2];
        return header.ReportDescriptor is { } hex && Convert.FromHexString(hex, bytes, out var used, out _) == OperationStatus.Done && used == hex.Length ? bytes : null;
    }

    private static string[] Damage(RecordingHeader header) =>
        header.ReportDescriptor is not null && Descriptor(header) is null ? ["the report descriptor in the first line is damaged: what the reports' bits mean is not known"]
        : header.Codes.Any(code => RecordedCode.Read(code) is null) ? ["a code in the first line is damaged: what is recorded of it is not known"]
        : [];

    /// <summary>Only a line with its end is whole.</summary>
    private static (ReportLog Reports, List<string> Events, List<RefusedItem> Refused) ReadLines(string[] lines)
    {
        var (reports, events, refused) = (new ReportLog(), new List<string>(), new List<RefusedItem>());
        var bytes = new byte[ReportLog.LongestReport];
        for (var index = 1; index < lines.Length - 1; index++)
        {
            if (lines[index].StartsWith("e ", StringComparison.Ordinal))
            {
                events.Add(lines[index][2..]);
            }
            else if (LevelIn(lines[index]) is null && !TakeReport(lines[index], bytes, reports))
            {
                refused.Add(new RefusedItem(Place(index), "not a stamp and bytes"));
            }
        }

        if (lines[^1].Length > 0)
        {
            refused.Add(new RefusedItem(Place(lines.Length - 1), "cut off: the recording did not end in good order"));
        }

        return (reports, events, refused);
    }

    private static (long Before, long After, int Level)? LevelIn(string line) =>
        line.Split(' ') is ["l", var before, var after, var level]
        && long.TryParse(before, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var from)
        && long.TryParse(after, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var to)
        && ushort.TryParse(level, NumberStyles.None, CultureInfo.InvariantCulture, out var set)
            ? (from, to, set)
            : null;

    private static bool TakeReport(string line, byte[] bytes, ReportLog reports)
    {
        var space = line.IndexOf(' ', StringComparison.Ordinal);
        if (space < 1
            || !long.TryParse(line.AsSpan(0, space), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var stamp)
            || Convert.FromHexString(line.AsSpan(space + 1), bytes, out _, out var count) != OperationStatus.Done)
        {
            return false;
        }

        reports.Add(stamp, 0, bytes.AsSpan(0, count));
        return true;
    }

    private static string Place(int index) => string.Create(CultureInfo.InvariantCulture, $"line {index + 1}");
}
