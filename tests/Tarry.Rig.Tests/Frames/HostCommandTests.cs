using System.Text;
using Tarry.Rig.Frames;

namespace Tarry.Rig.Tests.Frames;

public class HostCommandTests
{
    [Fact]
    public void Encode_CommandsOfThePage_GivesTheGoldenFrames()
    {
        byte[][] encoded =
        [
            HostCommand.Hello.Encode(1),
            HostCommand.Set(RigParameter.IntervalMinimum, 70_000).Encode(2),
            HostCommand.Set(RigParameter.IntervalMaximum, 110_000).Encode(3),
            HostCommand.Set(RigParameter.ResponseSource, 0).Encode(4),
            HostCommand.Set(RigParameter.Seed, 1).Encode(5),
            HostCommand.Set(RigParameter.Count, 2000).Encode(6),
            HostCommand.Go.Encode(7),
            HostCommand.Acknowledge(1),
            HostCommand.Ping(0x42).Encode(8),
            HostCommand.Resend(2, 3).Encode(9),
            HostCommand.Stop.Encode(10),
            HostCommand.Set(RigParameter.Actuator, 2).Encode(11),
            HostCommand.Set(RigParameter.AxisLow, 0x2000).Encode(12),
            HostCommand.Set(RigParameter.AxisHigh, 0xe000).Encode(13),
            HostCommand.Set(RigParameter.AxisRamp, 10_000).Encode(14),
            HostCommand.Set(RigParameter.ReferenceMode, 1).Encode(15),
            HostCommand.Set(RigParameter.ReadingInterval, 1_000).Encode(16),
            HostCommand.Set(RigParameter.ReadingReference, 1).Encode(17),
            HostCommand.Stream.Encode(18),
            HostCommand.Level(0x8000).Encode(19),
        ];
        Assert.Equal(ProtocolPage.GoldenFromHost, encoded.Select(bytes => Encoding.ASCII.GetString(bytes).TrimEnd('\n')));
    }
}
