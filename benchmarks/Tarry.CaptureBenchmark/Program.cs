using System.Diagnostics;
using System.Globalization;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Imports.Tests.PacketCapture;
using static System.FormattableString;

// How fast a large capture is read, and in how much memory, beside tshark on the same file in the same run.
//   dotnet run -c Release --project benchmarks/Tarry.CaptureBenchmark -- FILE [MEGABYTES] [TSHARK_PACKETS]
// FILE is made where it is not there; run again for figures without the making: a gamepad at 8,000 reports a second over usbmon, submissions and completions.
var path = args.Length > 0 ? args[0] : "large.pcapng";
var bytes = 1_000_000L * (args.Length > 1 ? long.Parse(args[1], CultureInfo.InvariantCulture) : 1_000);
var tsharkPackets = args.Length > 2 ? args[2] : "200000";
if (!File.Exists(path))
{
    Make(path, bytes);
}

var size = new FileInfo(path).Length;
var watch = Stopwatch.StartNew();
var file = CaptureFile.Read(path, UsbSpeed.Unknown, null, CancellationToken.None);
var (seconds, cpuSeconds) = (watch.Elapsed.TotalSeconds, Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds);
Console.WriteLine(Invariant($"tarry, SHA-256 and all reports kept: {file.Content.Packets} packets, {file.Content.Devices.Sum(device => device.Reports)} reports, {size / 1e6:0} MB in {seconds:0.00} s = {size / 1e6 / seconds:0} MB/s ({size / 1e6 / cpuSeconds:0} MB a CPU second, start included); largest working set {Peak(Environment.ProcessId)}"));

Outside("capinfos", "counting packets and bytes alone", size, "-c", "-d", path);
Outside("tshark", $"the first {tsharkPackets} packets, reports and times", null, "-n", "-r", path, "-c", tsharkPackets, "-Y", "usbhid.data", "-T", "fields", "-e", "frame.time_epoch", "-e", "usbhid.data");
return 0;

static void Make(string path, long bytes)
{
    var head = SampleCaptures.Usb(SampleDescriptors.Gamepad, [], interval: 1, controlPacket: 64, maxPacket: 64, driverInterval: 1);
    var reports = SampleCaptures.Reports(1, 4_096, 11, 1);
    using var file = new BufferedStream(File.Create(path), 1 << 20);
    file.Write(SampleFiles.PcapNg(220, head));
    for (long number = 0; file.Position < bytes; number++)
    {
        var at = (ulong)(SampleCaptures.Start + 1_000_000_000 + (number * 125_000));
        file.Write(SampleFiles.Packet(0, at - 20_000, SamplePackets.UsbMon('S', 1, 0x81, 5, 3, (ulong)number, [], status: -115, interval: 1, length: 64)));
        file.Write(SampleFiles.Packet(0, at, SamplePackets.UsbMon('C', 1, 0x81, 5, 3, (ulong)number, reports[(int)(number % reports.Count)], interval: 1)));
    }
}

static void Outside(string program, string what, long? size, params string[] arguments)
{
    // Submission and completion in turn, with their blocks.
    static double megabytesOf(long reports) => reports * 204 / 1e6;
    try
    {
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var lines = 0L;
        var (peak, cpu) = ("not known", double.NaN);
        while (process.StandardOutput.ReadLine() is not null)
        {
            if (lines++ % 4_096 == 4_095 && !process.HasExited)
            {
                process.Refresh();
                (peak, cpu) = (Peak(process.Id), megabytesOf(lines) / process.TotalProcessorTime.TotalSeconds);
            }
        }

        process.WaitForExit();
        var megabytes = size / 1e6 ?? megabytesOf(lines);
        Console.WriteLine(Invariant($"{program}, {what}: {megabytes:0} MB in {watch.Elapsed.TotalSeconds:0.00} s = {megabytes / watch.Elapsed.TotalSeconds:0.0} MB/s{(double.IsNaN(cpu) ? "" : Invariant($" ({cpu:0.0} MB a CPU second); largest working set seen {peak}"))}"));
    }
    catch (System.ComponentModel.Win32Exception)
    {
        Console.WriteLine($"{program} is not installed (Debian package tshark).");
    }
}

// The kernel's own mark, which the library does not give for another process after its end.
static string Peak(int process)
{
    var line = File.Exists($"/proc/{process}/status") ? File.ReadLines($"/proc/{process}/status").FirstOrDefault(line => line.StartsWith("VmHWM", StringComparison.Ordinal)) : null;
    return line is null ? "not known" : Invariant($"{long.Parse(new string([.. line.Where(char.IsAsciiDigit)]), CultureInfo.InvariantCulture) / 1_000} MB");
}
