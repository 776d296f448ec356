using System.Buffers.Binary;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Tarry.Imports;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Imports.ValueChangeDump;
using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Benchmarks;

/// <summary>Large recordings of a logic analyser and of sound, read here and by general-purpose programs in the same run.</summary>
internal static class Recordings
{
    private const int SampleRate = 96_000;
    private static readonly RecordingTarget Target = new(new SessionKey("monday", "quill"), []);

    public static void Run(int megabytes)
    {
        var folder = Directory.CreateTempSubdirectory("tarry-benchmark-").FullName;
        try
        {
            Console.WriteLine($"{"",-34}{"MB",8}{"wall s",9}{"CPU s",9}{"MB/s",8}{"MB/CPU s",10}   {"peak MB",8}");
            var dump = Path.Combine(folder, "x.vcd");
            WriteDump(dump, megabytes * 1_000_000L);
            Ours("value change dump", dump, () => ValueChangeDumpImport.Read(
                dump, new ValueChangeDumpOptions { PressChannel = "contact", ResponseChannel = "lamp", Window = new PairingWindow(0, 60) }, Target));
            File.Delete(dump);
            foreach (var kind in new[] { SignalKind.Light, SignalKind.Click })
            {
                foreach (var bits in new[] { 16, 24, 32 })
                {
                    // One file at a time: the disk need not hold all of them.
                    var sound = Path.Combine(folder, "x.wav");
                    WriteSound(sound, megabytes * 1_000_000L, bits, kind);
                    var name = kind == SignalKind.Light ? "light" : "clicks";
                    Ours($"sound, {name}, {bits} bits", sound, () => TwoChannelImport.Read(
                        sound, new TwoChannelOptions { Response = kind, Window = new PairingWindow(1, 100) }, Target));
                    Other("sox -n stat", sound, "sox", sound, "-n", "stat");
                }
            }

            // Some hundred times slower than reading: a part says enough.
            var part = Path.Combine(folder, "part.vcd");
            WriteDump(part, Math.Min(megabytes, 20) * 1_000_000L);
            Other("sigrok-cli -O bits (20 MB of it)", part, "sigrok-cli", "-I", "vcd", "-i", part, "-O", "bits", "-o", "/dev/null");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Ours(string what, string file, Func<ImportPlan> read)
    {
        var process = Process.GetCurrentProcess();
        var (before, clock) = (process.TotalProcessorTime, Stopwatch.StartNew());
        var plan = read();
        process.Refresh();
        Line(what, file, clock.Elapsed.TotalSeconds, (process.TotalProcessorTime - before).TotalSeconds, process.PeakWorkingSet64);
        Console.WriteLine($"{"",-34}{plan.Record.RowsKept} of {plan.Record.RowsRead} presses kept");
    }

    private static void Other(string what, string file, string program, params string[] arguments)
    {
        try
        {
            var clock = Stopwatch.StartNew();
            // The shell tells the processor time of what it ran; of a process that has ended there is no other way.
            using var process = Process.Start(new ProcessStartInfo("bash", ["-c", "TIMEFORMAT='cpu %U %S'; time \"$@\" > /dev/null 2>&1", "bash", program, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var times = process.StandardError.ReadToEnd().Split(' ', StringSplitOptions.TrimEntries);
            process.WaitForExit();
            if (process.ExitCode == 0)
            {
                Line(what, file, clock.Elapsed.TotalSeconds, times[1..3].Sum(time => double.Parse(time, CultureInfo.InvariantCulture)), null);
            }
            else
            {
                Console.Error.WriteLine($"{program} is not installed, or failed: its line is left out.");
            }
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Console.Error.WriteLine($"There is no bash to time {program} with: its line is left out.");
        }
    }

    private static void Line(string what, string file, double wall, double cpu, long? peak)
    {
        var megabytes = new FileInfo(file).Length / 1e6;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-34}{megabytes,8:0}{wall,9:0.00}{cpu,9:0.00}{megabytes / wall,8:0}{megabytes / cpu,10:0}   {peak / 1e6,8:0}"));
    }

    // Eight channels, six of them a busy bus; 10 ns ticks, several changes on a line.
    private static void WriteDump(string file, long bytes)
    {
        using var text = new StreamWriter(file, false, new UTF8Encoding(false), 1 << 20);
        text.Write("$timescale 10 ns $end\n$scope module bench $end\n$var wire 1 ! contact $end\n$var wire 1 \" lamp $end\n");
        for (var channel = 0; channel < 6; channel++)
        {
            text.Write($"$var wire 1 {(char)('#' + channel)} bus{channel} $end\n");
        }

        text.Write("$upscope $end\n$enddefinitions $end\n#0 0! 0\"\n");
        var generator = new SeededGenerator(1);
        var time = 0L;
        var next = 1_000_000L;
        for (var written = 0L; written < bytes; written += 24)
        {
            time += 1 + generator.NextInt32(40);
            var bits = generator.NextUInt64();
            text.Write('#');
            text.Write(time);
            for (var channel = 0; channel < 4; channel++)
            {
                text.Write(' ');
                text.Write((bits >> channel & 1) == 0 ? '0' : '1');
                text.Write((char)('#' + channel));
            }

            if (time >= next)
            {
                // A press each 10 ms of recorded time, answered in the same step of the loop after 3 to 5 ms.
                text.Write($" 1!\n#{time += 300_000 + generator.NextInt32(200_000)} 1\"\n#{time += 100_000} 0! 0\"");
                next = time + 1_000_000;
            }

            text.Write('\n');
        }
    }

    // A press in 0.4 s, answered after 30 ms.
    private static void WriteSound(string file, long bytes, int bits, SignalKind kind)
    {
        var width = bits / 8;
        var frames = (int)((bytes - 44) / (2 * width));
        using var data = new BinaryWriter(new BufferedStream(File.Create(file), 1 << 20));
        data.Write("RIFF"u8);
        data.Write((uint)((frames * 2L * width) + 36));
        data.Write("WAVEfmt "u8);
        data.Write(16);
        data.Write((short)1);
        data.Write((short)2);
        data.Write(SampleRate);
        data.Write(SampleRate * 2 * width);
        data.Write((short)(2 * width));
        data.Write((short)bits);
        data.Write("data"u8);
        data.Write((uint)(frames * 2L * width));
        var generator = new SeededGenerator(2);
        Span<byte> frame = stackalloc byte[8];
        for (var index = 0; index < frames; index++)
        {
            var t = index % (SampleRate * 4 / 10) / (double)SampleRate;
            var noise = ((long)(generator.NextUInt64() >> 44) - (1 << 19)) * 2e-9;
            var response = kind == SignalKind.Click ? Click(t - 0.08) : t is >= 0.08 and < 0.2 ? 0.3 * (1 - Math.Exp(-(t - 0.08) / 0.0003)) : 0;
            BinaryPrimitives.WriteInt32LittleEndian(frame, (int)((Click(t - 0.05) + noise) * int.MaxValue) >> (32 - bits));
            BinaryPrimitives.WriteInt32LittleEndian(frame[width..], (int)((response - noise) * int.MaxValue) >> (32 - bits));
            data.Write(frame[..(2 * width)]);
        }
    }

    private static double Click(double t) => t is >= 0 and < 0.02 ? 0.3 * Math.Exp(-t / 0.001) * Math.Sin(2 * Math.PI * 3_000 * t) : 0;
}
