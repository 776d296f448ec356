using Tarry.Imports;
using Tarry.Imports.HidReports;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Web.Sticks;

/// <summary>This computer reads a device that it is connected to. y grows towards the user in its reports, as HID has it.</summary>
internal sealed class HostStickWork : IStickWork
{
    private const string PlaceOfLive = "the device";
    private readonly IHostInputDevice device;
    private readonly StickCard card;
    private readonly TimeProvider time;
    private readonly IReadOnlyList<RecordedCode> codes;
    private readonly ReportEndpoint endpoint;
    private readonly StickReportAxes axes;

    /// <summary>Finds the stick in what the device says.</summary>
    /// <param name="device">The device, open; disposed of with this.</param>
    /// <param name="card">What is recorded.</param>
    /// <param name="time">The clock of the steps.</param>
    /// <exception cref="HostInputException">It is a text keyboard.</exception>
    /// <exception cref="ImportException">It has no stick.</exception>
    public HostStickWork(IHostInputDevice device, StickCard card, TimeProvider time)
    {
        (this.device, this.card, this.time) = (device, card, time);
        var description = device.Description;
        if (description.IsTextKeyboard)
        {
            throw new HostInputException($"{description.Path} is a text keyboard, and what is recorded of it can be what somebody types.", "Choose the device with the stick.");
        }

        codes = description.ReportDescriptor.IsEmpty ? RecordedCode.AllOf(description) : [];
        var (fields, idIsFirstByte) = codes.Count > 0 ? ([.. codes.Select((code, index) => code.Field(index))], false) : FieldsOf(description.ReportDescriptor);
        endpoint = new ReportEndpoint { Number = 0, Transport = "", ReportIdIsFirstByte = idIsFirstByte };
        var ranges = RecordingHeader.Of(device, codes).Axes;
        axes = StickReportAxes.Of(new ReportStream { Device = description.Name, Endpoints = [endpoint], Fields = fields }, WithRanges(ranges), PlaceOfLive);
    }

    /// <inheritdoc/>
    public StickCaptureResult Record(Study study, StudyLock held, IProgress<StickProgress> progress, Func<bool> discards, CancellationToken stop)
    {
        var file = StickCapture.FileOf(study, card.Key);
        var recorder = new HostStickRecorder(device, codes, card.Request, Position, progress, time);
        var isComplete = recorder.Run(file, stop);
        if (!File.Exists(file))
        {
            return new StickCaptureResult(false, null);
        }

        if (discards() || recorder.Reports == 0)
        {
            File.Delete(file);
            return new StickCaptureResult(false, null);
        }

        return new StickCaptureResult(isComplete, Seal(study, held, card.Key));
    }

    /// <summary>Seals what a recording of the host holds, also one that broke off.</summary>
    /// <exception cref="HostInputException">It is no recording, or holds no report.</exception>
    /// <exception cref="ImportException">No report holds a position.</exception>
    /// <exception cref="StudyException">It cannot be sealed; the recording is kept.</exception>
    public static StickSession Seal(Study study, StudyLock held, SessionKey key)
    {
        var file = StickCapture.FileOf(study, key);
        var (reports, import) = RecordedSession.Read(file, key, FieldsOf);
        var plan = StickReportImport.Of(reports, null, WithRanges(RecordedSession.AxesOf(file)), new RecordingTarget(key, study.File.Conditions), import.FileName, import.Sha256, import.Format);
        plan.AddTo(study, held);
        return plan.StickSessions[0];
    }

    /// <inheritdoc/>
    public void Dispose() => device.Dispose();

    private (double X, double Y)? Position(ReadOnlySpan<byte> report) =>
        endpoint.ReportIdOf(report) == axes.X.ReportId && axes.CountsIn(report) is var (x, y) ? (Share(x, axes.RangeX), -Share(y, axes.RangeY)) : null;

    private static double Share(long count, StickRange range) => (2 * (count - range.Minimum) / (range.Maximum - range.Minimum)) - 1;

    /// <summary>The ranges that the device stated of its first stick, where it tells changes.</summary>
    private static StickReportOptions WithRanges(IReadOnlyList<RecordedAxis> stated)
    {
        StickRange? Of(string column) => stated.FirstOrDefault(axis => axis.Column == column) is { } axis ? new StickRange(axis.Minimum, axis.Maximum, 1) : null;
        return new StickReportOptions { X = Of("abs_x"), Y = Of("abs_y") };
    }

    private static (IReadOnlyList<ReportField> Fields, bool IdIsFirstByte) FieldsOf(ReadOnlyMemory<byte> bytes)
    {
        var descriptor = HidReportDescriptor.Parse(bytes.Span);
        return (HidReportFields.Of(descriptor, endpoint: 0, descriptor.UsesReportIds).Fields, descriptor.UsesReportIds);
    }
}
