using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace Tarry.Tests.Emulator;

/// <summary>An emulated bench that runs the real firmware, for the length of a test.</summary>
internal sealed class EmulatedBench : IDisposable
{
    private readonly Process process;
    private readonly string truth;
    private readonly Task<string> messages;

    public EmulatedBench(TemporaryFolder folder, string board, params string[] options)
    {
        EmulatorBuild.Require();
        Port = folder["port"];
        truth = folder["truth.csv"];
        process = Process.Start(new ProcessStartInfo(
            EmulatorBuild.Program,
            ["--board", board, "--firmware", EmulatorBuild.Firmware(board), "--link", Port, "--truth", truth, .. options])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;

        // The first line comes once the rig has booted; the rest is read so that the emulator never waits for a reader.
        var first = process.StandardOutput.ReadLine();
        _ = Task.Factory.StartNew(ReadReports, TaskCreationOptions.LongRunning);
        messages = process.StandardError.ReadToEndAsync();
        Assert.True(first is not null, "the emulator did not start: " + (first is null ? messages.Result : ""));
    }

    public string Port { get; }

    /// <summary>In echo mode: the device's reports, as they reach the host.</summary>
    public BlockingCollection<string> Reports { get; } = [];

    /// <summary>Ends the emulator and reads what it injected, a list for each time the rig counted its ticks from the start.</summary>
    public IReadOnlyList<Dictionary<long, InjectedTruth>> Truth()
    {
        Stop();
        // Between two restarts the machine's cycles and the rig's ticks advance together.
        const long longestOffsetChange = 1_000_000;
        var stretches = new List<Dictionary<long, InjectedTruth>>();
        long? offset = null;
        foreach (var cells in File.ReadLines(truth).Skip(1).Select(line => line.Split(',')))
        {
            var press = long.Parse(cells[3], CultureInfo.InvariantCulture);
            var ahead = long.Parse(cells[0], CultureInfo.InvariantCulture) - press;
            if (offset is not { } before || Math.Abs(ahead - before) > longestOffsetChange)
            {
                stretches.Add(new());
            }

            offset = ahead;
            stretches[^1][press] = new InjectedTruth(cells[1].Length == 0 ? null : double.Parse(cells[1], CultureInfo.InvariantCulture), cells[2]);
        }

        return stretches;
    }

    /// <summary>Ends the emulator and reads what it counted.</summary>
    public string Summary()
    {
        Stop();
        return messages.Result;
    }

    public void Dispose()
    {
        Stop();
        process.Dispose();
        Reports.Dispose();
    }

    private void ReadReports()
    {
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (line.StartsWith("report ", StringComparison.Ordinal))
            {
                Reports.Add(line);
            }
        }
    }

    private void Stop()
    {
        if (process.HasExited)
        {
            return;
        }

        using var terminate = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
        terminate.WaitForExit();
        if (!process.WaitForExit(5000))
        {
            process.Kill();
            process.WaitForExit();
        }
    }
}

/// <summary>What the emulator did at a press.</summary>
internal sealed record InjectedTruth(double? LatencyUs, string Kind);
