using System.Globalization;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.Audio;

/// <summary>Reads a sound recording (WAV) with a contact or its click on one channel and a light sensor or a second pick-up on another. See <c>docs/formats/audio.md</c>.</summary>
public static class TwoChannelImport
{
    /// <summary>The name of the format in records of imports.</summary>
    public const string Format = "two-channel-wav";

    private const double LongestWindowMs = 10_000;
    private const int BlocksAhead = 4;

    /// <summary>Reads a file completely and says what it would add to a study; nothing is written but pictures of what is in doubt, where a folder is named.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">The channels and how to pair them.</param>
    /// <param name="target">What the recording is taken in as.</param>
    /// <param name="progress">Told about every second of the recording or so.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <remarks>One pass; memory holds the last seconds, and up to 64 MB of clicks for their comparison.</remarks>
    /// <exception cref="ImportException">The file is no recording, has no such channel, or nothing of it could be kept.</exception>
    /// <exception cref="ArgumentException">The options contradict each other.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static ImportPlan Read(
        string path, TwoChannelOptions options, RecordingTarget target, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(target);
        Require(options);
        var fileName = Path.GetFileName(path);
        using var file = RecordingFile.Open(path);
        try
        {
            var format = WaveHeader.Read(file);
            if (Math.Max(options.PressChannel, options.ResponseChannel) > format.Channels)
            {
                throw new ImportException(
                    format.Channels == 1 ? "The file has one channel." : $"The file has {format.Channels} channels.", fileName, "Record press and response on two channels, and name them with --press-channel and --response-channel, from 1.");
            }

            var plan = new RecordingPlan(target, fileName, Format);
            var reading = new TwoChannelReading(format, options, plan, fileName);
            Follow(file, format, options, reading, plan, frames =>
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report(new ImportProgress(fileName, file.Position, file.Length, frames));
            });
            Describe(plan, options, format);
            RecordingFile.ReadToEnd(file);
            return plan.Build(file.Sha256, TwoChannelReading.TickHz, "Check which channel is which, the levels of the recording, and --max-latency-ms; --pictures DIR shows what is in doubt.");
        }
        catch (DamagedRecordingException damaged)
        {
            throw new ImportException(
                damaged.Message, FormattableString.Invariant($"{fileName} byte {damaged.Damage.Offset}"), "Give a WAV file of two channels.", damaged);
        }
        catch (IOException failure)
        {
            throw new ImportException($"Reading stopped: {failure.Message}", fileName, "Check the disk or the connection and import again.", failure);
        }
    }

    private static void Follow(HashedFile file, WaveFormat format, TwoChannelOptions options, TwoChannelReading reading, RecordingPlan plan, Action<long> progress)
    {
        // A press takes far longer to answer than the samples about it: the response channel may fall some blocks behind, and catch up.
        var reader = new WaveReader(file, format);
        var (blocks, followed) = (new Block[BlocksAhead], Task.CompletedTask);
        long frames = 0;
        try
        {
            for (var number = 0; ; number++)
            {
                var block = blocks[number % BlocksAhead] ??= new Block(reader.Frames);
                block.Followed.GetAwaiter().GetResult();
                block.Count = reader.Read(options.PressChannel - 1, block.PressSamples, options.ResponseChannel - 1, block.ResponseSamples);
                if (block.Count == 0)
                {
                    break;
                }

                var presses = reading.TakePress(block.Press);
                followed = block.Followed = followed.ContinueWith(
                    before =>
                    {
                        before.GetAwaiter().GetResult();
                        reading.TakeResponse(block.Press, block.Response, presses);
                    },
                    TaskScheduler.Default);
                frames += block.Count;
                progress(frames);
            }

            followed.GetAwaiter().GetResult();
        }
        finally
        {
            // Whatever failed: nothing follows a reading that was given up.
            followed.ContinueWith(_ => { }, TaskScheduler.Default).Wait();
        }

        if (frames == 0)
        {
            throw new DamagedRecordingException(reader.Damage?.Offset ?? file.Position, "The file holds no samples.");
        }

        reading.End();
        if (reader.Damage is { } damage)
        {
            plan.StopAt(damage);
        }

        if (reader.NotFinite > 0)
        {
            plan.Event(FormattableString.Invariant($"{reader.NotFinite} samples were no finite numbers and were read as 0"));
        }
    }

    private sealed class Block(int frames)
    {
        public float[] PressSamples { get; } = new float[frames];

        public float[] ResponseSamples { get; } = new float[frames];

        public int Count { get; set; }

        /// <summary>Ends when the response channel has been followed over it.</summary>
        public Task Followed { get; set; } = Task.CompletedTask;

        public ReadOnlySpan<float> Press => PressSamples.AsSpan(0, Count);

        public ReadOnlySpan<float> Response => ResponseSamples.AsSpan(0, Count);
    }

    private static void Require(TwoChannelOptions options)
    {
        options.Window.Require();
        if (options.PressChannel < 1 || options.ResponseChannel < 1 || options.PressChannel == options.ResponseChannel)
        {
            throw new ArgumentException($"The channels {options.PressChannel} and {options.ResponseChannel} cannot be press and response; give two different ones, from 1.", nameof(options));
        }

        if (options.Window.LongestMs > LongestWindowMs)
        {
            throw new ArgumentException(FormattableString.Invariant($"A longest latency of {options.Window.LongestMs} ms is too long for a sound recording; give at most {LongestWindowMs} ms."), nameof(options));
        }

        if (options.CouplingCornerHz is { } corner && !(corner is > 0 and <= 1_000))
        {
            throw new ArgumentException(FormattableString.Invariant($"A capacitor's corner of {corner} Hz cannot be; it lies between 0 and 1,000 Hz."), nameof(options));
        }
    }

    private static void Describe(RecordingPlan plan, TwoChannelOptions options, WaveFormat format)
    {
        plan.Options["press_channel"] = options.PressChannel.ToString(CultureInfo.InvariantCulture);
        plan.Options["response_channel"] = options.ResponseChannel.ToString(CultureInfo.InvariantCulture);
        plan.Options["response_signal"] = options.Response == SignalKind.Light ? "light" : "click";
        plan.Options["response_edge"] = options.ResponseEdge == Statistics.Edges.SignalEdge.Falling ? "falling" : "rising";
        plan.Options["debounce_ms"] = options.DebounceMs.ToString(CultureInfo.InvariantCulture);
        plan.Options["min_latency_ms"] = options.Window.ShortestMs.ToString(CultureInfo.InvariantCulture);
        plan.Options["max_latency_ms"] = options.Window.LongestMs.ToString(CultureInfo.InvariantCulture);
        plan.Options["sample_rate_hz"] = format.SampleRate.ToString(CultureInfo.InvariantCulture);
        if (options.CouplingCornerHz is { } corner)
        {
            plan.Options["ac_corner_hz"] = corner.ToString(CultureInfo.InvariantCulture);
        }

        plan.Note(FormattableString.Invariant($"{format.Channels} channels, {format.SampleRate} Hz, {format.Bits} bits{(format.IsFloat ? " floating point" : "")}"));
    }
}
