using Tarry.DamagedInputs;

namespace Tarry.Imports.Tests.DamagedInputs;

/// <summary>Damaged inputs for every reader, 100,000 with those of the host's own input; the soak beside the tests reads millions.</summary>
public sealed class DamagedInputTests : IDisposable
{
    private const ulong Seed = 20_260;
    private const ulong Inputs = 7_000;
    private readonly TemporaryFolder folder = new();

    public static TheoryData<string> Readers => [.. new RecordingReaders("").All().Select(reader => reader.Name)];

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

    // Otherwise the damage would be all that is read, and no reader would be seen at work.
    [Theory]
    [MemberData(nameof(Readers))]
    public void Read_ValidInputs_AreTakenIn(string reader)
    {
        var damaged = Find(reader);
        Assert.All(damaged.Valid, valid => damaged.Read(valid));
    }

    public void Dispose() => folder.Dispose();

    private DamagedReader Find(string name) => new RecordingReaders(folder.Path).All().Single(reader => reader.Name == name);
}
