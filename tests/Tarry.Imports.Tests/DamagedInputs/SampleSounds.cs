using System.Buffers.Binary;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Imports.Tests.Audio;
using Tarry.Metrology;

namespace Tarry.Imports.Tests.DamagedInputs;

/// <summary>Recordings of 0.6 s and three presses at 8,000 samples a second: as small as one is in which a press is found.</summary>
internal static class SampleSounds
{
    private const int Rate = 8_000;
    private const int Frames = 4_800;
    private static readonly int[] Presses = [1_000, 2_200, 3_400];

    public static readonly TwoChannelOptions Light = new() { Window = new PairingWindow(0, 60), DebounceMs = 40 };

    public static readonly TwoChannelOptions Clicks = Light with { Response = SignalKind.Click };

    public static byte[][] WithLight() => Files((generator, since) => since is >= 240 and < 640 ? 0.5f : 0f);

    public static byte[][] WithClicks() => Files((generator, since) => Click(since - 240));

    private static byte[][] Files(Func<SeededGenerator, int, float> response)
    {
        var generator = new SeededGenerator(21);
        var (press, answer) = (new float[Frames], new float[Frames]);
        for (var index = 0; index < Frames; index++)
        {
            var since = index - Presses.LastOrDefault(at => at <= index, Frames);
            press[index] = Click(since) + (0.001f * (float)generator.NextNormal());
            answer[index] = response(generator, since) + (0.001f * (float)generator.NextNormal());
        }

        float[][] channels = [press, answer];
        return
        [
            WaveBytes.Of(Rate, 1, 16, channels, (bytes, sample) => BinaryPrimitives.WriteInt16LittleEndian(bytes, (short)(sample * 32_767))),
            WaveBytes.Float(Rate, channels),
        ];
    }

    private static float Click(int since) => since is >= 0 and < 80 ? 0.6f * MathF.Exp(-since / 8f) * MathF.Sin(2 * MathF.PI * since * 2_500 / Rate) : 0;
}
