namespace Tarry.Imports.Audio;

/// <summary>How the samples of a WAV file are stored.</summary>
/// <param name="Channels">Channels in a frame.</param>
/// <param name="SampleRate">Frames a second.</param>
/// <param name="IsFloat">Whether samples are floating-point numbers.</param>
/// <param name="Bits">Bits of a stored sample: 8, 16, 24, 32 or 64.</param>
/// <param name="DataOffset">The byte at which the first frame begins.</param>
/// <param name="DataBytes">Bytes of frames by the header; null where it does not say, so that frames go on to the end of the file.</param>
internal sealed record WaveFormat(int Channels, int SampleRate, bool IsFloat, int Bits, long DataOffset, long? DataBytes)
{
    public int FrameBytes => Channels * Bits / 8;
}
