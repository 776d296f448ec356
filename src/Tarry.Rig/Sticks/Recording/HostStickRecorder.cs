using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Recording;
using static System.FormattableString;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>Does a procedure while the host records what a device says: the reports of steps that are part of it go to a recording as they come.</summary>
/// <remarks>The steps go by the host's clock; a report is of the step that was on when this program got it.</remarks>
/// <param name="device">The device, open.</param>
/// <param name="codes">What of it is recorded, where the host tells changes; none where it gives its reports' bytes.</param>
/// <param name="request">What is done.</param>
/// <param name="position">Finds the position in a report.</param>
/// <param name="progress">Told where it stands.</param>
/// <param name="time">The clock of the steps.</param>
public sealed class HostStickRecorder(
    IHostInputDevice device, IReadOnlyList<RecordedCode> codes, StickRecordingRequest request, StickPositionReader position, IProgress<StickProgress>? progress, TimeProvider time)
{
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(20);
    private readonly StickGuide guide = request.Guide;
    private readonly IReadOnlyList<StickPrompt> prompts = request.Guide.Prompts;
    private readonly ReportState state = new(codes, device.Description.Axes);
    private (double X, double Y) newest;

    /// <summary>Reports in the recording.</summary>
    public long Reports { get; private set; }

    /// <summary>Records until the steps are done, the user stops it, or the device is gone. What came is in the file.</summary>
    /// <param name="file">The recording to begin.</param>
    /// <param name="cancellation">Stops it in good order.</param>
    /// <returns>Whether all steps were done.</returns>
    /// <exception cref="HostInputException">The device went before the first step; nothing is begun.</exception>
    /// <exception cref="IOException">The file is there already, or the disk failed.</exception>
    public bool Run(string file, CancellationToken cancellation)
    {
        var begins = time.GetTimestamp() + (long)(request.ReadySeconds * time.TimestampFrequency);
        while (Since(begins) < 0 && !cancellation.IsCancellationRequested)
        {
            progress?.Report(Progress(Since(begins)));
            if (!device.Read(Turn, report => Take(report, null)))
            {
                throw new HostInputException($"{device.Description.Name} went before the first step; nothing was recorded.", "Connect it, and try again.");
            }
        }

        if (cancellation.IsCancellationRequested)
        {
            return false;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        using var recording = new RecordingFile(file, RecordingHeader.Of(device, codes));
        var there = true;
        while (there && Since(begins) < guide.Seconds && !cancellation.IsCancellationRequested)
        {
            there = device.Read(Turn, report => Take(report, IsKept(Since(begins)) ? recording : null));
            recording.RequireSound();
            progress?.Report(Progress(Since(begins)));
        }

        Note(recording, there);
        return there && !cancellation.IsCancellationRequested;
    }

    private void Take(InputReport report, RecordingFile? recording)
    {
        var bytes = codes.Count > 0 ? state.Take(report) : report.Bytes;
        if (bytes.IsEmpty)
        {
            return;
        }

        newest = position(bytes) ?? newest;
        if (recording is not null)
        {
            Reports++;
            recording.Add(report.StampNanoseconds, bytes);
        }
    }

    private void Note(RecordingFile recording, bool there)
    {
        if (device.Losses > 0)
        {
            recording.AddEvent(Invariant($"the system lost reports {device.Losses} times, because they were not read in time"));
        }

        if (!there)
        {
            recording.AddEvent("the device went: unplugged, or switched off");
        }
    }

    private double Since(long begins) => (time.GetTimestamp() - begins) / (double)time.TimestampFrequency;

    private StickProgress Progress(double seconds) => new(prompts, seconds, Reports, newest.X, newest.Y);

    private bool IsKept(double seconds)
    {
        var ends = 0.0;
        return guide.Steps.FirstOrDefault(step => (ends += step.Seconds) > seconds) is { Kept: true };
    }
}
