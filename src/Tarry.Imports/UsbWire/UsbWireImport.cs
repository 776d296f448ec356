using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;
using Tarry.Imports.ValueChangeDump;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.UsbWire;

/// <summary>Finds the reports of a device in a recording of the two data lines of its cable.</summary>
public static class UsbWireImport
{
    private const int MostReports = 5_000_000;

    /// <summary>Reads a value change dump completely.</summary>
    /// <param name="path">The file.</param>
    /// <param name="plus">The channel of D+.</param>
    /// <param name="minus">The channel of D-.</param>
    /// <param name="speed">The cable's rate.</param>
    /// <param name="progress">Told about every million words.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <remarks>A report is the data packet that follows a poll (IN token), stamped with the beginning of that packet. Packets that fail a check are counted and left aside.</remarks>
    /// <exception cref="ImportException">The file is no dump, or has no such channel.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static UsbWireReading Read(
        string path, string plus, string minus, UsbSpeed speed, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        var fileName = Path.GetFileName(path);
        using var file = RecordingFile.Open(path);
        try
        {
            return Read(file, fileName, plus, minus, speed, count =>
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

    private static UsbWireReading Read(HashedFile file, string fileName, string plus, string minus, UsbSpeed speed, Action<long> progress)
    {
        var tokens = new TokenScanner(file);
        var header = DumpHeader.Read(tokens);
        var lines = new[]
        {
            ChannelSelection.Find(header.Nets, plus, null, "--usb-plus-channel", fileName),
            ChannelSelection.Find(header.Nets, minus, null, "--usb-minus-channel", fileName),
        };
        var unitsASecond = (double)header.TickHz / header.TicksPerUnit;
        var transactions = new Transactions(fileName);
        var decoder = new UsbLineDecoder(speed, unitsASecond, transactions.Take);
        var changes = new ChangeReader(tokens, lines);
        string? damage = null;
        try
        {
            changes.Read((time, levels) => decoder.Step(time, levels[0], levels[1]), progress);
        }
        catch (DamagedRecordingException damaged)
        {
            damage = FormattableString.Invariant($"{fileName} byte {damaged.Damage.Offset}: {damaged.Message}");
            RecordingFile.ReadToEnd(file);
        }

        return new UsbWireReading(fileName, file.Sha256, unitsASecond, transactions.Reports, transactions.Polls, decoder.Bad, damage);
    }

    private sealed class Transactions(string fileName)
    {
        private (int Address, int Endpoint)? polled;

        public List<UsbReport> Reports { get; } = [];

        public long Polls { get; private set; }

        public void Take(UsbPacket packet)
        {
            if (packet.Identifier is UsbPacketBits.Data0 or UsbPacketBits.Data1 && polled is var (address, endpoint))
            {
                if (Reports.Count == MostReports)
                {
                    throw new ImportException($"The recording holds more than {MostReports} reports.", fileName, "Cut it into parts.");
                }

                Reports.Add(new UsbReport(packet.Start, address, endpoint, packet.Content));
            }

            polled = null;
            if (packet.Identifier == UsbPacketBits.In)
            {
                Polls++;
                var content = packet.Content[0] | (packet.Content[1] << 8);
                polled = (content & 0x7F, (content >> 7) & 0xF);
            }
        }
    }
}
