using System.Globalization;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.Video;

/// <summary>Reads the brightness of two regions of a high-speed video, one row a frame. See <c>docs/formats/video.md</c>.</summary>
public static class VideoImport
{
    /// <summary>The name of the format in records of imports.</summary>
    public const string Format = "video-brightness";

    private const long NanosecondHz = 1_000_000_000;

    /// <summary>Reads a file completely and says what it would add to a study; nothing is written.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">The columns and the capture rate.</param>
    /// <param name="target">What the recording is taken in as.</param>
    /// <param name="progress">Told about every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <remarks>
    /// A change is seen in the first frame that shows it, and happened since the frame before. So the latency lies between
    /// (r' - p) / f and (r - p') / f, where p and r are the frames that show press and response first, p' and r' those before them, and f the
    /// capture rate: between (d - 1) / f and (d + 1) / f where no frame is missing. It is kept as that interval, never as a point.
    /// </remarks>
    /// <exception cref="ImportException">The file has no such columns, or nothing of it could be kept.</exception>
    /// <exception cref="ArgumentException">The options contradict each other.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static ImportPlan Read(
        string path, VideoOptions options, RecordingTarget target, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(target);
        options.Window.Require();
        if (!(options.CaptureFps is >= 1 and <= 1_000_000))
        {
            throw new ArgumentException(FormattableString.Invariant($"A camera does not capture {options.CaptureFps} frames a second; give what it was set to, such as 240."), nameof(options));
        }

        var fileName = Path.GetFileName(path);
        using var file = OpenedFile.Open(path);
        try
        {
            var plan = new RecordingPlan(target, fileName, Format);
            var table = BrightnessTable.Read(file, fileName, options, plan, rows =>
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report(new ImportProgress(fileName, file.Content.Position, file.Content.Length, rows));
            });
            if (table.Numbers.Count == 0)
            {
                throw new ImportException($"The table holds no frame.{plan.FirstRefused}", fileName, "Give a table with a row for each frame.");
            }

            Pair(table, options, plan, fileName);
            RecordingFile.ReadToEnd(file.Content);
            return plan.Build(file.Content.Sha256, NanosecondHz, "Check the columns and --press-edge and --response-edge; a brightness that decides is set by --press-threshold and --response-threshold.");
        }
        catch (IOException failure)
        {
            throw new ImportException($"Reading stopped: {failure.Message}", fileName, "Check the disk or the connection and import again.", failure);
        }
    }

    private static void Pair(BrightnessTable table, VideoOptions options, RecordingPlan plan, string fileName)
    {
        var press = Levels(table.Press, options.PressThreshold, options.PressColumn, "--press-threshold", plan, fileName);
        var response = Levels(table.Response, options.ResponseThreshold, options.ResponseColumn, "--response-threshold", plan, fileName);
        var numbers = table.Numbers.ToArray();
        var fps = options.CaptureFps;
        var (shortest, longest) = options.Window.Ticks(fps);
        var trials = new PairedTrials(plan, fileName, NanosecondHz, frame => (long)Math.Round(frame / fps * NanosecondHz), Bounds);
        var pairer = new EdgePairer(shortest, longest, trials.Add);
        var (contact, answer) = (new EdgeFilter(options.PressEdge, 0), new EdgeFilter(options.ResponseEdge, 0));
        for (var index = 0; index < numbers.Length; index++)
        {
            var wasActive = answer.Active;
            var answered = answer.Take(numbers[index], response.LevelOf(table.Response[index], answer.Level));
            if (contact.Take(numbers[index], press.LevelOf(table.Press[index], contact.Level)))
            {
                pairer.Press(numbers[index], wasActive);
            }

            if (answered)
            {
                pairer.Response(numbers[index]);
            }
        }

        pairer.End(numbers[^1]);
        Describe(plan, options, table, press, response);

        (long Low, long High) Bounds(EdgePair pair)
        {
            // An edge is never in the first frame, so there is one before.
            var (p, r) = (pair.Press, pair.Response!.Value);
            var beforePress = numbers[Array.BinarySearch(numbers, (int)p) - 1];
            var beforeResponse = numbers[Array.BinarySearch(numbers, (int)r) - 1];
            return ((long)Math.Floor(Math.Max(0, beforeResponse - p) / fps * NanosecondHz), (long)Math.Ceiling((r - beforePress) / fps * NanosecondHz));
        }
    }

    private static BrightnessLevels Levels(IReadOnlyList<float> brightness, double? threshold, string column, string option, RecordingPlan plan, string fileName) =>
        threshold is { } stated ? new BrightnessLevels(stated, 0)
        : BrightnessLevels.Of(MedianOfThree(brightness)) ?? BrightnessLevels.Of(brightness) ?? throw new ImportException(
            $"The column {column} is of one brightness throughout.{plan.FirstRefused}", fileName, $"Check that the region holds what changes, or say from which brightness on it counts: {option}.");

    // A damaged number in one frame must not decide what is bright; where nothing is bright for two frames, all frames decide.
    private static float[] MedianOfThree(IReadOnlyList<float> brightness)
    {
        var medians = new float[Math.Max(0, brightness.Count - 2)];
        for (var index = 0; index < medians.Length; index++)
        {
            var (one, two, three) = (brightness[index], brightness[index + 1], brightness[index + 2]);
            medians[index] = Math.Max(Math.Min(one, two), Math.Min(Math.Max(one, two), three));
        }

        return medians;
    }

    private static void Describe(RecordingPlan plan, VideoOptions options, BrightnessTable table, BrightnessLevels press, BrightnessLevels response)
    {
        plan.Options["capture_fps"] = options.CaptureFps.ToString(CultureInfo.InvariantCulture);
        plan.Options["press_column"] = options.PressColumn;
        plan.Options["response_column"] = options.ResponseColumn;
        plan.Options["press_edge"] = options.PressEdge == SignalEdge.Falling ? "falling" : options.PressEdge == SignalEdge.Rising ? "rising" : "any";
        plan.Options["response_edge"] = options.ResponseEdge == SignalEdge.Falling ? "falling" : options.ResponseEdge == SignalEdge.Rising ? "rising" : "any";
        plan.Options["press_threshold"] = press.Threshold.ToString("0.###", CultureInfo.InvariantCulture);
        plan.Options["response_threshold"] = response.Threshold.ToString("0.###", CultureInfo.InvariantCulture);
        plan.Options["min_latency_ms"] = options.Window.ShortestMs.ToString(CultureInfo.InvariantCulture);
        plan.Options["max_latency_ms"] = options.Window.LongestMs.ToString(CultureInfo.InvariantCulture);
        plan.Note(FormattableString.Invariant($"{table.Numbers.Count} frames; each latency is an interval of {2000 / options.CaptureFps:0.###} ms, two frames"));
        if (Math.Abs(table.StampedFps - options.CaptureFps) > 0.01 * options.CaptureFps)
        {
            plan.Caution(FormattableString.Invariant(
                $"the time stamps say {table.StampedFps:0.##} frames a second; the stated capture rate of {options.CaptureFps} is used, as slow motion needs. If the camera did not capture at that rate, every latency is wrong by the same factor"));
        }

        if (table.Missing > 0)
        {
            plan.Event(FormattableString.Invariant($"{table.Missing} frames are missing by the time stamps; intervals across them are wider"));
        }

        plan.Event("a camera with a rolling shutter reads the rows of a frame one after another: where press and response are not at the same height of the picture, add up to one frame time");
    }
}
