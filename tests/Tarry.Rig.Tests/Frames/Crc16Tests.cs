using Tarry.Rig.Frames;

namespace Tarry.Rig.Tests.Frames;

public class Crc16Tests
{
    [Fact]
    public void Compute_CheckString_GivesTheCataloguedValue() =>
        // Catalogue of parametrised CRC algorithms, CRC-16/IBM-3740: check = 0x29b1.
        Assert.Equal(0x29b1, Crc16.Compute("123456789"u8));

    [Fact]
    public void Compute_NoBytes_GivesTheStartValue() => Assert.Equal(0xffff, Crc16.Compute([]));
}
