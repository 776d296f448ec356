using Tarry.DamagedInputs;

namespace Tarry.Rig.Tests.HostEvents;

/// <summary>Damaged inputs for the readers of the host's own input; those of files are in the tests of imports, the soak beside the tests reads millions.</summary>
public sealed class DamagedHostInputTests : IDisposable
{
    private const ulong Seed = 20_260;
    private const ulong Inputs = 2_500;
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("tarry-damaged-");

    public static TheoryData<string> Readers => [.. new HostInputReaders("").All().Select(reader => reader.Name)];

    [Theory]
    [MemberData(nameof(Readers))]
    public void Read_DamagedInputs_EndsWithoutFaultInBoundedMemory(string reader)
    {
        var damaged = Find(reader);
        for (ulong number = 0; number < Inputs; number++)
        {
            damaged.ReadDamaged(Seed, number);
        }
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void Read_ValidInputs_AreTakenIn(string reader)
    {
        var damaged = Find(reader);
        Assert.All(damaged.Valid, valid => damaged.Read(valid));
    }

    public void Dispose() => folder.Delete(recursive: true);

    private DamagedReader Find(string name) => new HostInputReaders(folder.FullName).All().Single(reader => reader.Name == name);
}
