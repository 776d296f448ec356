using System.Globalization;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Files;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.Recordings;
using Tarry.Imports.ValueChangeDump;

namespace Tarry.Imports.UsbWire;

/// <summary>Reads the two data lines of a USB cable from a value change dump, as a capture of what was on the cable. See <c>docs/formats/value-change-dump.md</c>.</summary>
public static class UsbCableRecording
{
    private const string Remedy = "Check --usb-plus-channel and --usb-minus-channel, which may be swapped, and --usb-speed.";

    /// <summary>Reads a dump completely.</summary>
    /// <param name="path">The file.</param>
    /// <param name="cable">The channels and the rate.</param>
    /// <param name="progress">Told about every million words.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <remarks>
    /// A report is the acknowledged data packet that follows a poll (IN token), stamped with the beginning of that packet, in nanoseconds
    /// since the recording began. Packets that fail a check are counted and left aside. Where the file is damaged reading stops, and what came before is kept.
    /// </remarks>
    /// <exception cref="ImportException">The file is no dump, has no such channel, or no device sent a report.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static CaptureFile Read(string path, UsbCable cable, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(cable);
        var fileName = Path.GetFileName(path);
        using var file = RecordingFile.Open(path);
        try
        {
            return Read(file, fileName, cable, count =>
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report(new ImportProgress(fileName, file.Position, file.Length, count));
            });
        }
        catch (DamagedRecordingException damaged)
        {
            throw new ImportException(
                damaged.Message, FormattableString.Invariant($"{fileName} byte {damaged.Damage.Offset}"), "Give a value change dump, as logic analysers export it ('VCD').", damaged);
        }
        catch (IOException failure)
        {
            throw new ImportException($"Reading stopped: {failure.Message}", fileName, "Check the disk or the connection and import again.", failure);
        }
    }

    private static CaptureFile Read(HashedFile file, string fileName, UsbCable cable, Action<long> progress)
    {
        var tokens = new TokenScanner(file);
        var header = DumpHeader.Read(tokens);
        var plus = ChannelSelection.Find(header.Nets, cable.PlusChannel, null, "--usb-plus-channel", fileName);
        var minus = ChannelSelection.Find(header.Nets, cable.MinusChannel, null, "--usb-minus-channel", fileName);
        if ((plus.Net, plus.Place) == (minus.Net, minus.Place))
        {
            throw new ImportException($"Both data lines are the channel {plus.Net.Path}.", fileName, "Give --usb-plus-channel and --usb-minus-channel a channel each.");
        }

        var defects = new CaptureDefects();
        var usb = new UsbTransfers(defects);
        var rounded = false;
        var fine = false;
        var transactions = new UsbTransactions(usb, defects, Nanoseconds, () => tokens.Offset);
        var decoder = new UsbLineDecoder(
            cable.Speed,
            (double)header.TickHz / header.TicksPerUnit,
            transactions.Take,
            () => defects.Add(CaptureDefectKind.PacketMalformed, tokens.Offset, "a packet on the cable fails a check of USB; it is left out"));
        try
        {
            new ChangeReader(tokens, [plus, minus]).Read((time, levels) => decoder.Step(time, levels[0], levels[1]), progress);
        }
        catch (DamagedRecordingException damaged)
        {
            defects.Add(tokens.AtEnd ? CaptureDefectKind.CutOff : CaptureDefectKind.TextDamaged, damaged.Damage.Offset, $"{damaged.Damage.Problem} What came before is kept");
            RecordingFile.ReadToEnd(file);
        }

        var devices = usb.Devices.Select(device => InputCapture.Of(device, UsbSpeed.LowOrFull)).Where(device => device.Reports > 0).ToList();
        if (devices.Count == 0)
        {
            var first = defects.First.Count == 0 ? "" : FormattableString.Invariant($" {defects.First[0]}.");
            throw new ImportException(
                FormattableString.Invariant($"No device sent a report: {transactions.Packets} packets in order, {transactions.Polls} of them polls, {defects.Total} not.{first}"), fileName, Remedy);
        }

        return new CaptureFile(fileName, file.Sha256, ValueChangeDumpImport.Format, new InputCapture
        {
            Devices = devices,
            Packets = transactions.Packets,
            PassedOver = new Dictionary<int, long>(),
            Defects = defects,
            FirstNanoseconds = 0,
            IsDated = false,
            WholeMicroseconds = !fine,
            RoundedToNanoseconds = rounded,
            Backwards = 0,
        })
        {
            Options = new Dictionary<string, string>
            {
                ["usb_plus_channel"] = plus.Net.Path,
                ["usb_minus_channel"] = minus.Net.Path,
                ["usb_signalling"] = cable.Speed.ToString().ToLower(CultureInfo.InvariantCulture),
            },
        };

        long Nanoseconds(long units)
        {
            var (whole, rest) = Int128.DivRem((Int128)units * header.TicksPerUnit * 1_000_000_000, header.TickHz);
            rounded |= rest != 0;
            fine |= rest != 0 || whole % 1_000 != 0;
            return whole <= long.MaxValue ? (long)whole
                : throw new DamagedRecordingException(tokens.Offset, "The time is more than 290 years after the beginning.");
        }
    }
}
