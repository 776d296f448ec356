using System.Buffers.Binary;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.Tests.Audio;

public class WaveHeaderTests
{
    // 16-bit mono at 8 kHz as SoX writes it.
    private const string Plain = "52494646340000005741564566 6d7420100000000100 0100401f0000803e00000200100064617461 10000000 0000825aff7f815a00007ea500807da5";

    // 24-bit stereo as SoX writes it: WAVEFORMATEXTENSIBLE, then a fact chunk. GUID by Microsoft, mmreg.h.
    private const string Extensible = "52494646 00000000 57415645 666d7420 28000000 feff 0200 401f0000 80bb0000 0600 1800 1600 1800 03000000"
        + "0100 0000 0000 1000 8000 00aa 0038 9b71 66616374 04000000 01000000 64617461 06000000 010000 ffffff";

    [Fact]
    public void Header_OfPlainPcm_IsRead() =>
        Assert.Equal(new WaveFormat(1, 8_000, false, 16, 44, 16), WaveHeader.Read(Bytes(Plain)));

    [Fact]
    public void Samples_OfPlainPcm_AreThoseOfTheirIntegers()
    {
        using var file = Bytes(Plain);
        var reader = new WaveReader(file, WaveHeader.Read(file));
        var (samples, other) = (new float[WaveReader.BlockFrames], new float[WaveReader.BlockFrames]);
        Assert.Equal(8, reader.Read(0, samples, 0, other));
        Assert.Equal([0f, 0x5a82 / 32768f, 0x7fff / 32768f, 0x5a81 / 32768f, 0, -0x5a82 / 32768f, -1, -0x5a83 / 32768f], samples[..8]);
        Assert.Equal(0, reader.Read(0, samples, 0, other));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(29)]
    public void Samples_OfTwoChannelsOf16Bits_AreThoseOfTheirIntegers(int frames)
    {
        var left = Enumerable.Range(0, frames).Select(index => (short)(32_767 - (index * 2_339))).ToArray();
        var right = Enumerable.Range(0, frames).Select(index => (short)((index * 2_111) - 32_768)).ToArray();
        var channels = new[] { left, right }.Select(channel => channel.Select(sample => (float)sample).ToArray()).ToArray();
        using var file = new MemoryStream(WaveBytes.Of(48_000, 1, 16, channels, (bytes, sample) => BinaryPrimitives.WriteInt16LittleEndian(bytes, (short)sample)));
        var (second, first) = (new float[WaveReader.BlockFrames], new float[WaveReader.BlockFrames]);
        Assert.Equal(frames, new WaveReader(file, WaveHeader.Read(file)).Read(1, second, 0, first));
        Assert.Equal(left.Select(sample => sample / 32_768f), first[..frames]);
        Assert.Equal(right.Select(sample => sample / 32_768f), second[..frames]);
    }

    [Fact]
    public void Header_Extended_IsReadByItsSubformat()
    {
        using var file = Bytes(Extensible);
        var format = WaveHeader.Read(file);
        Assert.Equal((2, 8_000, false, 24, 6L), (format.Channels, format.SampleRate, format.IsFloat, format.Bits, format.DataBytes!.Value));
        var (left, right) = (new float[WaveReader.BlockFrames], new float[WaveReader.BlockFrames]);
        Assert.Equal(1, new WaveReader(file, format).Read(0, left, 1, right));
        Assert.Equal((1 / 8_388_608f, -1 / 8_388_608f), (left[0], right[0]));
    }

    [Fact]
    public void Header_WithLongSizes_IsReadByItsDs64()
    {
        // EBU Tech 3306: the ds64 chunk holds the RIFF size, the data size and the sample count.
        using var file = Bytes("52463634 ffffffff 57415645 64733634 1c000000 4800000000000000 1000000000000000 0800000000000000 00000000"
            + "666d7420 10000000 0100 0100 401f0000 803e0000 0200 1000 64617461 ffffffff 0000825aff7f815a00007ea500807da5");
        Assert.Equal(16, WaveHeader.Read(file).DataBytes);
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("247661 72", 0)]
    [InlineData("52494646 00000000 41564920", 0)]
    [InlineData("52494646 00000000 57415645", 12)]
    [InlineData("52494646 00000000 57415645 64617461 10000000 0000", 12)]
    [InlineData("52494646 00000000 57415645 666d7420 04000000 01000100", 12)]
    [InlineData("52494646 00000000 57415645 666d7420 10000000 0200 0200 401f0000 803e0000 0200 0400", 12)]
    [InlineData("52494646 00000000 57415645 666d7420 10000000 0100 0000 401f0000 803e0000 0200 1000", 12)]
    [InlineData("52494646 00000000 57415645 666d7420 10000000 0100 0100 401f0000 803e0000 0200 0c00", 12)]
    [InlineData("52494646 00000000 57415645 4c495354 ffffff7f 00", 12)]
    public void File_ThatIsNone_IsNamedWithItsByte(string hex, long offset) =>
        Assert.Equal(offset, Assert.Throws<DamagedRecordingException>(() => WaveHeader.Read(Bytes(hex))).Damage.Offset);

    private static MemoryStream Bytes(string hex) => new(Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal)));
}
