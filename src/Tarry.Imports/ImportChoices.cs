using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.Recordings;
using Tarry.Imports.ValueChangeDump;

namespace Tarry.Imports;

/// <summary>What a file holds that the options of its import can name: a look at its head, or of a packet capture at the whole.</summary>
/// <param name="Columns">The names of the columns of a table.</param>
/// <param name="Channels">The channels of a recording: paths of a dump's nets, numbers of sound channels from 1.</param>
/// <param name="Devices">The devices of a packet capture.</param>
public sealed record ImportChoices(IReadOnlyList<string> Columns, IReadOnlyList<string> Channels, IReadOnlyList<ImportDevice> Devices)
{
    private const int MostChannels = 500;

    /// <summary>Nothing to choose from.</summary>
    public static ImportChoices None { get; } = new([], [], []);

    /// <summary>Looks into a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="format">Its format, one of <see cref="ImportFormat.All"/>.</param>
    /// <param name="delimiter">The character between the cells of a table; null to take the one that the header has most of.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="ImportException">It cannot be read as what it should be.</exception>
    public static ImportChoices Of(string path, string format, char? delimiter = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(path);
        ImportFormat.RequireReadable(path);
        try
        {
            return format switch
            {
                ImportFormat.LongForm or ImportFormat.Video => None with { Columns = ColumnsOf(path, delimiter) },
                ImportFormat.Logic => None with { Channels = NetsOf(path) },
                ImportFormat.Sound => None with { Channels = SoundChannelsOf(path) },
                _ => None with { Devices = DevicesOf(path, cancellation) },
            };
        }
        catch (DamagedRecordingException damaged)
        {
            throw new ImportException(
                damaged.Message, FormattableString.Invariant($"{Path.GetFileName(path)} byte {damaged.Damage.Offset}"), "Give another format, or another file.", damaged);
        }
        catch (IOException failure)
        {
            throw new ImportException($"The file cannot be read: {failure.Message}", Path.GetFileName(path), "Check the disk and who may read it.", failure);
        }
    }

    private static List<string> ColumnsOf(string path, char? delimiter)
    {
        const char comment = '#';
        using var file = OpenedFile.Open(path);
        using var rows = new RowReader(file.Content, delimiter ?? file.InferDelimiter(comment), comment);
        List<string> columns = [];
        if (rows.Read() && rows.Defect == RowDefect.None)
        {
            for (var index = 0; index < rows.Count; index++)
            {
                columns.Add(rows[index].Trim().TrimStart('\uFEFF').ToString());
            }
        }

        return columns;
    }

    private static IReadOnlyList<string> NetsOf(string path)
    {
        using var file = RecordingFile.Open(path);
        return
        [
            .. DumpHeader.Read(new TokenScanner(file)).Nets
                .SelectMany(net => net.IsReal || net.Width == 1 ? [net.Path] : Enumerable.Range(0, net.Width).Select(place => FormattableString.Invariant($"{net.Path}[{Index(net, place)}]")))
                .Take(MostChannels),
        ];
    }

    private static int Index(DumpNet net, int place) => net.Left >= net.Right ? net.Right + place : net.Right - place;

    private static IReadOnlyList<string> SoundChannelsOf(string path)
    {
        using var file = RecordingFile.Open(path);
        return [.. Enumerable.Range(1, WaveHeader.Read(file).Channels).Select(number => FormattableString.Invariant($"{number}"))];
    }

    private static IReadOnlyList<ImportDevice> DevicesOf(string path, CancellationToken cancellation) =>
    [
        .. CaptureFile.Read(path, UsbSpeed.Unknown, null, cancellation).Content.Devices.Select(device =>
            new ImportDevice(device.Id, device.ProductId, device.Reports, [.. DeviceFields.Of(device, null, []).Fields.Select(field => field.Column)])),
    ];
}
