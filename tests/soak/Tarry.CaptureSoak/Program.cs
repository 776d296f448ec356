using System.Diagnostics;
using System.Globalization;
using Tarry.Imports.Tests.PacketCapture;
using static System.FormattableString;

// Reads damaged captures and descriptors for as long as it is asked to, and writes a line a million to the log.
//   dotnet run -c Release --project tests/soak/Tarry.CaptureSoak -- [INPUTS] [SEED] [LOG]
var inputs = args.Length > 0 ? ulong.Parse(args[0], CultureInfo.InvariantCulture) : 10_000_000;
var seed = args.Length > 1 ? ulong.Parse(args[1], CultureInfo.InvariantCulture) : 1;
using var log = new StreamWriter(args.Length > 2 ? args[2] : "capture-soak.log") { AutoFlush = true };
var watch = Stopwatch.StartNew();
Say(Invariant($"{inputs} inputs over {string.Join(", ", CaptureMutations.Readers)}, seed {seed}"));
var faults = 0;
var slowest = TimeSpan.Zero;
for (ulong number = 0; number < inputs; number++)
{
    var began = watch.Elapsed;
    try
    {
        CaptureMutations.Read(CaptureMutations.Readers[number % (ulong)CaptureMutations.Readers.Length], seed, number);
    }
    catch (InvalidOperationException fault)
    {
        faults++;
        Say(fault.Message);
    }

    slowest = watch.Elapsed - began > slowest ? watch.Elapsed - began : slowest;
    if ((number + 1) % 1_000_000 == 0 || number + 1 == inputs)
    {
        Say(Invariant($"{number + 1} inputs, {faults} faults, {watch.Elapsed.TotalSeconds:0} s, slowest {slowest.TotalMilliseconds:0} ms, largest working set {Process.GetCurrentProcess().PeakWorkingSet64 >> 20} MB"));
    }
}

return faults == 0 ? 0 : 1;

void Say(string line)
{
    Console.WriteLine(line);
    log.WriteLine(line);
}
