using System.Globalization;
using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;
using static System.FormattableString;

namespace Tarry.Imports.PacketCapture;

/// <summary>Takes the reports of a device, or latencies from marked presses, from a packet capture. See <c>docs/formats/packet-capture.md</c>.</summary>
public sealed class PacketCaptureImport
{
    private const int LongestList = 1_000;
    private readonly CaptureFile file;
    private readonly PacketCaptureOptions options;
    private readonly IReadOnlyList<ConditionEntry> conditions;
    private readonly List<string> notes = [];
    private readonly byte[]? givenDescriptor;
    private readonly CapturedDevice device;
    private readonly ReportStream stream;
    private readonly long tickNanoseconds;
    private readonly long origin;

    private PacketCaptureImport(CaptureFile file, PacketCaptureOptions options, IReadOnlyList<ConditionEntry> conditions)
    {
        (this.file, this.options, this.conditions) = (file, options, conditions);
        givenDescriptor = options.ReportDescriptorFile is { } path ? DescriptorFrom(path) : null;
        device = DeviceNamed(options.Device, notMarker: true);
        NoteCapture();
        stream = DeviceFields.Of(device, givenDescriptor, notes);
        origin = file.Content.FirstNanoseconds ?? 0;
        // A packet before the first one, or in an order that is not that of time, must not make a negative tick.
        origin = Math.Min(origin, AllDevices().Select(Earliest).DefaultIfEmpty(origin).Min());
        tickNanoseconds = file.Content.WholeMicroseconds ? 1_000 : 1;
    }

    /// <summary>Reads a capture completely and says what it would add to a study; nothing is written.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What to take from it.</param>
    /// <param name="conditions">The conditions that the study has.</param>
    /// <param name="progress">Told about every 65,536 packets.</param>
    /// <param name="cancellation">Stops the reading; nothing is left behind.</param>
    /// <exception cref="ImportException">The file cannot be read, has no report, or an option names nothing that it has.</exception>
    public static ImportPlan Read(
        string path,
        PacketCaptureOptions options,
        IReadOnlyList<ConditionEntry> conditions,
        IProgress<ImportProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(conditions);
        return Of(CaptureFile.Read(path, options.Speed, progress, cancellation), options, conditions);
    }

    /// <summary>Says what a capture that has been read would add to a study; nothing is written.</summary>
    /// <param name="file">The capture.</param>
    /// <param name="options">What to take from it.</param>
    /// <param name="conditions">The conditions that the study has.</param>
    /// <exception cref="ImportException">It has no report, or an option names nothing that it has.</exception>
    public static ImportPlan Of(CaptureFile file, PacketCaptureOptions options, IReadOnlyList<ConditionEntry> conditions)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(conditions);
        return new PacketCaptureImport(file, options, conditions).Plan();
    }

    private static long Earliest(CapturedDevice device) =>
        device.Log.IsInOrder ? device.Log.Tick(0) : Enumerable.Range(0, device.Log.Count).Min(device.Log.Tick);

    private IEnumerable<CapturedDevice> AllDevices() => file.Content.Devices;

    private ImportPlan Plan()
    {
        var key = new SessionKey(Named(options.Sitting, "--sitting"), Named(options.Condition, "--condition"));
        var latencies = options switch
        {
            { Marker: { } marker } => Latencies(marker),
            { Presses: { } presses } => Latencies(presses),
            _ => null,
        };
        var reports = latencies is null ? device.Log.Select(IsOfDevice, Tick) : new ReportLog();
        var kept = latencies?.Count ?? reports.Count;
        var record = Record(key, kept);
        return new ImportPlan
        {
            Sessions = latencies is null ? [] : [(record, latencies)],
            ReportSessions = latencies is null ? [new ReportSession(record with { ReportStream = stream }, reports)] : [],
            NewConditions = conditions.Any(condition => condition.Id == key.Condition)
                ? []
                : [new ConditionEntry { Id = key.Condition, Factors = new Dictionary<string, string> { ["link"] = stream.Endpoints[0].Transport } }],
            Exclusions = [],
            Record = new ImportRecord
            {
                FileName = file.Name,
                Sha256 = file.Sha256,
                Format = file.Format,
                Options = record.Source!.Options,
                RowsRead = kept + file.Content.Defects.Total,
                RowsKept = kept,
                RefusedTotal = file.Content.Defects.Total,
                RefusedByReason = file.Content.Defects.ByKind.ToDictionary(pair => Words(pair.Key.ToString()), pair => pair.Value),
                Refused = record.Refused,
            },
            Notes = notes,
        };
    }

    private SessionRecord Record(SessionKey key, int kept)
    {
        var defects = file.Content.Defects;
        var used = new Dictionary<string, string>(file.Options)
        {
            ["device"] = device.Id,
            ["packets"] = file.Content.Packets.ToString(CultureInfo.InvariantCulture),
        };
        Use(used, "first_packet_utc", file.Content.IsDated ? DateTimeOffset.UnixEpoch.AddTicks(origin / 100).ToString("O", CultureInfo.InvariantCulture) : null);
        Use(used, "usb_speed", options.Speed == Usb.UsbSpeed.Unknown ? null : options.Speed.ToString());
        Use(used, "report_descriptor", givenDescriptor is null ? null : Convert.ToHexStringLower(givenDescriptor));
        Use(used, "marker", options.Marker);
        Use(used, "button", options.Button);
        Use(used, "presses", options.Presses?.Name);
        Use(used, "clock_offset_ms", options.ClockOffsetMs?.ToString(CultureInfo.InvariantCulture));
        Use(used, "clock_rate_ppm", options.ClockOffsetMs is null ? null : options.ClockRatePpm.ToString(CultureInfo.InvariantCulture));
        Use(used, "time_out_ms", options.Marker is null && options.ClockOffsetMs is null ? null : options.TimeOutMs.ToString(CultureInfo.InvariantCulture));
        return new SessionRecord
        {
            Key = key,
            Segments = [new Segment(null, 1, 1_000_000_000 / tickNanoseconds, null)],
            Source = new SourceFile(file.Name, file.Sha256, file.Format, used, kept + defects.Total),
            Refused = [.. defects.First.Take(LongestList).Select(defect => new RefusedItem(Invariant($"{file.Name} byte {defect.Offset}"), defect.Message))],
            RefusedTotal = defects.Total,
            Events = [.. notes],
        };
    }

    private List<Trial> Latencies(string marker)
    {
        var parts = marker.Split(':', 2);
        var markerDevice = DeviceNamed(parts[0], notMarker: false);
        var markerStream = DeviceFields.Of(markerDevice, null, new List<string>());
        var pressField = parts.Length == 2 ? FieldNamed(markerStream, parts[1], "--marker") : null;
        var presses = MarkedPresses.Events(
            markerDevice.Log,
            number => markerStream.Endpoints.Any(endpoint => endpoint.Number == number),
            pressField,
            markerStream.Endpoints.ToDictionary(endpoint => endpoint.Number),
            everyReport: pressField is null);
        if (presses.Count == 0)
        {
            throw new ImportException($"The marker {marker} marks no press.", file.Name, "Name the device or the field that changes when a press happens; --explain shows them.");
        }

        notes.Add($"a press is when a report of the marker {marker} reached the host, so latencies are against that report, not against the contact");
        return MarkedPresses.Trials(presses, Answers(), (long)(options.TimeOutMs * 1_000_000), Tick);
    }

    // Null where only the data relate the clocks: then how long latencies are is not known, and the reports are what is kept.
    private List<Trial>? Latencies(RigPresses rig)
    {
        var answers = Answers();
        var clocks = new RelatedClocks(rig, [.. answers.Select(answer => (answer - origin) / 1e9)], file.Name);
        if (options.ClockOffsetMs is { } offset)
        {
            // What a capture does not cover is no miss: before its first packet, and where the time-out reaches beyond its last report.
            var last = AllDevices().SelectMany(any => Enumerable.Range(0, any.Log.Count).Select(any.Log.Tick)).DefaultIfEmpty(origin).Max();
            var presses = clocks.ByStatement(offset, options.ClockRatePpm, notes)
                .Select(seconds => origin + (long)Math.Round(1e9 * seconds))
                .Where(press => press >= origin && press + (1e6 * options.TimeOutMs) <= last)
                .ToList();
            if (presses.Count == 0)
            {
                throw new ImportException("By this relation of the clocks no press falls into the capture.", file.Name, "Check --clock-offset-ms and --presses.");
            }

            notes.Add(Invariant($"{rig.Seconds.Count - presses.Count} presses fall before the capture or later than its last report less the time-out, and are left out"));
            return MarkedPresses.Trials(presses, answers, (long)(options.TimeOutMs * 1_000_000), Tick);
        }

        notes.AddRange(clocks.ByData());
        return null;
    }

    private List<long> Answers()
    {
        var button = options.Button is null ? null : FieldNamed(stream, options.Button, "--button");
        return MarkedPresses.Events(device.Log, IsOfDevice, button, stream.Endpoints.ToDictionary(endpoint => endpoint.Number), everyReport: false);
    }

    private void NoteCapture()
    {
        var content = file.Content;
        foreach (var (linkType, packets) in content.PassedOver)
        {
            notes.Add(Invariant($"packets of link type {linkType} were passed over: {packets}; it is not one of USB or Bluetooth that is read"));
        }

        if (content.Backwards > 0)
        {
            notes.Add(Invariant($"packets that are earlier than the one before: {content.Backwards}; reports are put in order of time"));
        }

        if (content.RoundedToNanoseconds)
        {
            notes.Add("times finer than a nanosecond were rounded to it");
        }
    }

    private CapturedDevice DeviceNamed(string? id, bool notMarker)
    {
        var devices = file.Content.Devices;
        var marker = notMarker && options.Marker is { } text ? text.Split(':', 2)[0] : null;
        var candidates = id is null ? [.. devices.Where(candidate => candidate.Id != marker)] : devices.Where(candidate => candidate.Id == id).ToList();
        if (candidates is [var only])
        {
            return only;
        }

        var list = string.Join(", ", devices.Select(candidate => Invariant($"{candidate.Id} ({candidate.Reports} reports)")));
        throw devices.Count == 0 && file.Content is { Packets: 0, Defects.First: [var damage, ..] }
            ? new ImportException($"{damage.Message}; no packet comes before.", Invariant($"{file.Name} byte {damage.Offset}"), "Copy the file again from where it was captured, or capture anew: what is there is only a piece.")
            : devices.Count == 0
            ? new ImportException(NothingFound(), file.Name, "Capture while the device is in use, from before it is plugged in or connected, so that its descriptors are in the capture.")
            : new ImportException(
                id is not null ? $"The capture has no device {id}." : $"The capture has reports of {devices.Count} devices: {list}.",
                file.Name,
                id is not null ? $"Name one of {list}." : "Name one with --device.");
    }

    private string NothingFound()
    {
        var content = file.Content;
        var passedOver = content.PassedOver.Count == 0 ? "" : $"; link types that are not read: {string.Join(", ", content.PassedOver.Keys.Order())}";
        var first = content.Defects.First.Count == 0 ? "" : $"; {content.Defects.First[0]}";
        return Invariant($"None of the {content.Packets} packets is a report of an input device{passedOver}{first}.");
    }

    private ReportField FieldNamed(ReportStream of, string name, string option) =>
        of.Fields.FirstOrDefault(field => field.Column == name)
        ?? throw new ImportException(
            $"{of.Device} has no field {name} ({option}).",
            file.Name,
            of.Fields.Count == 0 ? "The capture holds no report descriptor of it: leave the field out, or give --report-descriptor." : $"Name one of {string.Join(", ", of.Fields.Take(40).Select(field => field.Column))}.");

    private bool IsOfDevice(int number) => stream.Endpoints.Any(endpoint => endpoint.Number == number);

    private long Tick(long nanoseconds) => (nanoseconds - origin) / tickNanoseconds;

    private static byte[] DescriptorFrom(string path)
    {
        try
        {
            return HidReports.HidDescriptorFile.Read(File.ReadAllBytes(path));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new ImportException($"The report descriptor cannot be read: {failure.Message}", path, "Check the path and who may read it.", failure);
        }
    }

    private string Named(string? name, string option) =>
        name is not null && Names.IsName(name)
            ? name
            : throw new ImportException(
                name is null ? $"A capture does not say its {option[2..]}." : $"'{name}' is not a name for {option}.",
                file.Name,
                name is null ? $"Give {option}." : "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.");

    private static void Use(Dictionary<string, string> used, string name, string? value)
    {
        if (value is not null)
        {
            used[name] = value;
        }
    }

    /// <summary>The name of a kind in lower-case words.</summary>
    private static string Words(string name) =>
        string.Concat(name.Select((letter, index) => index > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : char.ToLowerInvariant(letter).ToString()));
}
