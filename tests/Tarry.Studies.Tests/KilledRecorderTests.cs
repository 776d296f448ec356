using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests;

/// <summary>Capture in a process of its own that is killed without a chance to clean up.</summary>
public sealed class KilledRecorderTests
{
    private const string Variable = "TARRY_TEST_RECORD_INTO";
    private static readonly SessionKey _key = new("monday", "quill-usb");

    /// <summary>In the child: records trials for ever and prints how far they are durable.</summary>
    [ModuleInitializer]
    internal static void RecordIfAsked()
    {
        if (Environment.GetEnvironmentVariable(Variable) is not { } folder)
        {
            return;
        }

        var study = Study.Open(folder);
        using var held = study.AcquireLock("child");
        using var recorder = study.SessionKeys.Contains(_key) ? study.Resume(held, _key) : study.Begin(held, ScratchStudy.Record());
        using var never = new ManualResetEvent(false);
        for (var sequence = recorder.DurableSequence + 1; ; sequence++)
        {
            recorder.Append(ScratchStudy.Response(sequence));
            Console.Out.WriteLine(recorder.DurableSequence.ToString(CultureInfo.InvariantCulture));
            Console.Out.Flush();
            never.WaitOne(1);
        }
    }

    [Fact]
    public void Recorder_KilledAgainAndAgain_LosesNothingShownAsDurable()
    {
        using var scratch = new ScratchStudy("quill-usb");
        long told = 0;
        for (var kill = 0; kill < 5; kill++)
        {
            told = Math.Max(told, RecordAndKill(scratch.Folder, linesBeforeTheKill: 40 + (kill * 17)));
            var trials = scratch.Study.Read(_key).Trials;
            Assert.True(trials.Count >= told, $"{told} trials were shown as durable and {trials.Count} are left");
            Assert.Equal(Enumerable.Range(1, trials.Count).Select(sequence => ScratchStudy.Response(sequence)), trials);
        }

        Assert.True(told > 50, $"only {told} trials were ever shown as durable");
        // The lock went with its holder.
        using var held = scratch.Study.AcquireLock("test");
        using var recorder = scratch.Study.Resume(held, _key);
        Assert.True(recorder.Seal().Trials.Count >= told);
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
    }

    private static long RecordAndKill(string folder, int linesBeforeTheKill)
    {
        var assembly = typeof(KilledRecorderTests).Assembly.Location;
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(assembly);
        start.Environment[Variable] = folder;
        using var child = Process.Start(start)!;
        long told = 0;
        for (var line = 0; line < linesBeforeTheKill && child.StandardOutput.ReadLine() is { } text; line++)
        {
            told = long.Parse(text, CultureInfo.InvariantCulture);
        }

        child.Kill();
        // What it printed before it died counts too.
        while (child.StandardOutput.ReadLine() is { } text)
        {
            told = long.TryParse(text, CultureInfo.InvariantCulture, out var number) ? Math.Max(told, number) : told;
        }

        child.WaitForExit();
        return told;
    }
}
