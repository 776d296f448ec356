using System.Globalization;
using Tarry.EchoBenchmark;
using Tarry.Metrology;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;

// How long the host's echo takes: from an event written into a pipe, in the bytes of evdev, to the byte handed to a
// pseudo-terminal. No USB, no driver and no serial chip are in it. Run it on an idle machine, with and without the right
// to real time (sudo, or an rtprio limit). Linux, 64 bits.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
const int presses = 3000;
var random = new SeededGenerator(1);
foreach (var forEcho in new[] { true, false })
{
    var (farSide, port) = PseudoTerminal.Open();
    var pad = new PipedPad();
    using var echo = new HostEcho(new HostInputFeed(() => pad), EchoTrigger.Of(pad.Description, null, null, false));
    echo.Begin();

    // What is compiled between the stamp and the pipe is this program's doing, not the echo's.
    pad.Tell(down: false);
    using var opened = new EchoingPortSource(new SerialRigPortSource(port, forEcho), echo).Open();
    var bytes = 0;
    var reader = new Thread(() =>
    {
        while (bytes < presses && farSide.ReadByte() >= 0)
        {
            bytes++;
        }
    });
    reader.Start();
    using var never = new ManualResetEventSlim();
    for (var press = 0; press < presses; press++)
    {
        pad.Tell(down: true);
        never.Wait(TimeSpan.FromMilliseconds(1 + random.NextInt32(3)));
        pad.Tell(down: false);
        never.Wait(TimeSpan.FromMilliseconds(1));
    }

    reader.Join();
    pad.EndTelling();
    Console.WriteLine($"{(forEcho ? "by a descriptor of its own" : "by the serial library, to its thread")}; {bytes} bytes came out");
    Console.WriteLine($"  {echo.Introduction}");
    Console.WriteLine($"  {echo.Summary}");
}
