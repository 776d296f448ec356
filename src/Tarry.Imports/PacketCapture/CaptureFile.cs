using Tarry.Imports.PacketCapture.Files;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.PacketCapture;

/// <summary>A capture file on the disk, read whole, with its hash.</summary>
/// <param name="Name">Its name without the folder.</param>
/// <param name="Sha256">SHA-256 of all its bytes, lower-case hex.</param>
/// <param name="Format">What it is: <c>pcap</c>, <c>pcapng</c>, <c>btsnoop</c>, or what else the packets were read from.</param>
/// <param name="Content">What is in it.</param>
public sealed record CaptureFile(string Name, string Sha256, string Format, InputCapture Content)
{
    /// <summary>How it was read, for the record of an import.</summary>
    public IReadOnlyDictionary<string, string> Options { get; init; } = new Dictionary<string, string>();

    /// <summary>The format of a file by its first bytes; null for another, or where it cannot be read.</summary>
    /// <param name="path">The file.</param>
    public static CaptureFormat? FormatOf(string path)
    {
        try
        {
            // Opening a pipe that nobody writes to never returns; its length is 0.
            if (new FileInfo(path) is not { Exists: true, Length: > 0 })
            {
                return null;
            }

            using var stream = File.OpenRead(path);
            var start = new byte[CaptureMagic.Length];
            return CaptureMagic.FormatOf(start.AsSpan(0, stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Reads a capture.</summary>
    /// <param name="path">The file.</param>
    /// <param name="speed">The speed of USB devices, where the user knows it.</param>
    /// <param name="progress">Told about every 65,536 packets.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="ImportException">It cannot be read, or is no packet capture.</exception>
    public static CaptureFile Read(string path, UsbSpeed speed, IProgress<ImportProgress>? progress, CancellationToken cancellation)
    {
        var name = Path.GetFileName(path);
        try
        {
            using var file = RecordingFile.Open(path);
            var format = FormatOf(path) ?? throw new ImportException("This is no pcap, pcapng or btsnoop file: it begins as none of them does.", $"{name} byte 0", "Save the capture in one of these formats.");
            var content = InputCapture.Read(file, speed, (packets, at) => progress?.Report(new ImportProgress(name, at, file.Length, packets)), cancellation)!;
            RecordingFile.ReadToEnd(file);
            return new CaptureFile(name, file.Sha256, format.ToString().ToLowerInvariant(), content);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new ImportException($"The file cannot be read: {failure.Message}", name, "Check the disk and who may read it.", failure);
        }
    }
}
