using System.Diagnostics;
using System.Globalization;
using Tarry.DamagedInputs;
using Tarry.Imports.Tests.DamagedInputs;
using Tarry.Rig.Tests.HostEvents;
using static System.FormattableString;

// Reads damaged inputs of every reader, in turn, and writes a line for each hundredth of them to the log. Interrupted, it can be begun again where it was.
//   dotnet run -c Release --project tests/soak/Tarry.Readers.Soak -- [INPUTS_A_READER] [SEED] [LOG] [FIRST] [READER]
var inputs = args.Length > 0 ? ulong.Parse(args[0], CultureInfo.InvariantCulture) : 600_000;
var seed = args.Length > 1 ? ulong.Parse(args[1], CultureInfo.InvariantCulture) : 1;
var first = args.Length > 3 ? ulong.Parse(args[3], CultureInfo.InvariantCulture) : 0;
using var log = new StreamWriter(args.Length > 2 ? args[2] : "readers-soak.log", append: first > 0) { AutoFlush = true };
var folder = Directory.CreateTempSubdirectory("tarry-soak-").FullName;
DamagedReader[] readers = [.. new RecordingReaders(folder).All().Concat(new HostInputReaders(folder).All()).Where(reader => args.Length <= 4 || reader.Name == args[4])];
var (faults, slowest) = (0, new Dictionary<string, TimeSpan>());
try
{
    var watch = Stopwatch.StartNew();
    Say(Invariant($"inputs {first} to {inputs} of each of {readers.Length} readers, seed {seed}: {string.Join(", ", readers.Select(reader => reader.Name))}"));
    for (var number = first; number < inputs; number++)
    {
        foreach (var reader in readers)
        {
            Read(reader, number);
        }

        if ((number + 1) % Math.Max(1, inputs / 100) == 0 || number + 1 == inputs)
        {
            Say(Invariant($"{(number + 1) * (ulong)readers.Length} inputs, {faults} faults, {watch.Elapsed.TotalSeconds:0} s, {Environment.CpuUsage.TotalTime.TotalSeconds:0} CPU s, largest working set {Process.GetCurrentProcess().PeakWorkingSet64 / 1_000_000} MB"));
        }
    }

    Say(Invariant($"slowest of each, ms (others may have had the processor): {string.Join(", ", slowest.OrderByDescending(pair => pair.Value).Select(pair => Invariant($"{pair.Key} {pair.Value.TotalMilliseconds:0}")))}"));
}
finally
{
    Directory.Delete(folder, recursive: true);
}

return faults == 0 ? 0 : 1;

void Read(DamagedReader reader, ulong number)
{
    var began = Stopwatch.GetTimestamp();
    try
    {
        reader.ReadDamaged(seed, number);
    }
    catch (InvalidOperationException fault)
    {
        faults++;
        Say(fault.Message);
    }

    var took = Stopwatch.GetElapsedTime(began);
    slowest[reader.Name] = slowest.TryGetValue(reader.Name, out var most) && most > took ? most : took;
}

void Say(string line)
{
    Console.WriteLine(line);
    log.WriteLine(line);
}
