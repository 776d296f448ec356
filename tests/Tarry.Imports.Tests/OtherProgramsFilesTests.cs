using System.Diagnostics;
using System.Globalization;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Imports.Tests.Audio;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Statistics.Edges;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;
using Tarry.Tests;

namespace Tarry.Imports.Tests;

/// <summary>Files that other programs wrote.</summary>
public sealed class OtherProgramsFilesTests : IDisposable
{
    private static readonly RecordingTarget Target = new(new SessionKey("monday", "quill"), []);
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Dump_OfSigrok_HasTheEdgesThatItsTableHas()
    {
        // The same capture, turned into a dump and into a table of levels, both by sigrok-cli 0.7.2.
        var sigrok = Requirement.Program("sigrok-cli", "sigrok-cli");
        Run(sigrok, "-d", "demo:analog_channels=0", "--config", "samplerate=1m", "--samples", "20000", "-o", folder["x.sr"]);
        Run(sigrok, "-i", folder["x.sr"], "-O", "vcd", "-o", folder["x.vcd"]);
        Run(sigrok, "-i", folder["x.sr"], "-O", "csv:time=true:label=channel:dedup=true", "-o", folder["x.txt"]);
        var rises = Rises(File.ReadLines(folder["x.txt"]), "D3");
        var plan = ValueChangeDumpImport.Read(
            folder["x.vcd"],
            new ValueChangeDumpOptions { PressChannel = "D3", ResponseChannel = "D3", ResponseEdge = SignalEdge.Falling, DebounceMs = 0, Window = new PairingWindow(0, 1) },
            Target,
            cancellation: TestContext.Current.CancellationToken);
        var trials = plan.Sessions.Single().Trials;
        Assert.InRange(rises.Count, 100, 20_000);
        Assert.Equal(rises, trials.Select(trial => trial.PressTicks!.Value * 1_000_000 / plan.Sessions.Single().Record.Segments[0].TickHz));
    }

    [Theory]
    [InlineData("-b 16 -e signed-integer", "")]
    [InlineData("-b 24 -e signed-integer", "")]
    [InlineData("-b 32 -e signed-integer", "")]
    [InlineData("-b 32 -e floating-point", "")]
    [InlineData("-b 64 -e floating-point", "")]
    [InlineData("-b 24 -e signed-integer", "rate 96k")]
    public void Sound_OfSox_GivesTheLatenciesOfItsSource(string form, string effect)
    {
        var sox = Requirement.Program("sox", "sox");
        var recording = new SyntheticRecording { SampleRate = 48_000, Presses = 6, PressIntervalMs = 300 };
        var source = folder.Write("source.wav", recording.Wave());
        Run(sox, [source, .. form.Split(' '), folder["x.wav"], .. effect.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        var trials = TwoChannelImport.Read(folder["x.wav"], new TwoChannelOptions { Window = new PairingWindow(1, 100) }, Target, cancellation: TestContext.Current.CancellationToken).Sessions.Single().Trials;
        Assert.All(recording.Truth().Zip(trials), pair => Assert.InRange((pair.Second.LatencyTicks!.Value / 1e9) - pair.First.Latency, -1e-4, 1e-4));
        Assert.Equal(6, trials.Count);
    }

    [Fact]
    public void Brightness_OfFfmpeg_HoldsTheDelayThatItsSourceHas()
    {
        // Two black squares: one turns white half a second into each second, the other 50 ms later; a camera of 100 frames a second.
        var ffprobe = Requirement.Program("ffprobe", "ffmpeg");
        var press = Luma(ffprobe, "color=black:s=32x32:r=100:d=4,geq=lum='if(gte(mod(T,1),0.495),235,16)':cb=128:cr=128,signalstats");
        var response = Luma(ffprobe, "color=black:s=32x32:r=100:d=4,geq=lum='if(gte(mod(T,1),0.545),235,16)':cb=128:cr=128,signalstats");
        Assert.Equal(400, press.Count);
        var table = folder.Write("x.csv", "pts_time,press,response\n" + string.Join('\n', press.Zip(response, (one, other) => $"{one},{other.Split(',')[1]}")) + "\n");
        var trials = VideoImport.Read(table, new VideoOptions { CaptureFps = 100, Window = new PairingWindow(0, 200) }, Target, cancellation: TestContext.Current.CancellationToken).Sessions.Single().Trials;
        Assert.Equal(4, trials.Count);
        Assert.All(trials, trial => Assert.Equal((Outcome.Response, 40_000_000L, 60_000_000L), (trial.Outcome, trial.LatencyTicks!.Value, trial.LatencyHighTicks!.Value)));
    }

    public void Dispose() => folder.Dispose();

    private static List<string> Luma(string ffprobe, string source) =>
        [.. Run(ffprobe, "-v", "error", "-f", "lavfi", "-i", source, "-show_entries", "frame=pts_time:frame_tags=lavfi.signalstats.YAVG", "-of", "csv=p=0")
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(line => line.TrimEnd(','))];

    private static List<long> Rises(IEnumerable<string> lines, string channel)
    {
        string[]? header = null;
        long? begins = null;
        var (rises, before) = (new List<long>(), "");
        foreach (var line in lines.Where(line => line.Length > 0 && line[0] != ';'))
        {
            var cells = line.Split(',');
            if (header is null)
            {
                header = cells;
                continue;
            }

            // Microseconds at this sample rate; the table counts its first sample as 1, the dump as 0.
            var time = long.Parse(cells[0], CultureInfo.InvariantCulture);
            begins ??= time;
            var level = cells[Array.IndexOf(header, channel)];
            if (before == "0" && level == "1")
            {
                rises.Add(time - begins.Value);
            }

            before = level;
        }

        return rises;
    }

    private static string Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} failed: {errors.Result}");
        return output;
    }
}
