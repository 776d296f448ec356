namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>A hundred thousand damaged inputs over the readers; the soak beside the tests reads millions.</summary>
public class DamagedInputTests
{
    private const ulong Seed = 20_260;

    public static TheoryData<string, ulong> Runs
    {
        get
        {
            var runs = new TheoryData<string, ulong>();
            foreach (var reader in CaptureMutations.Readers)
            {
                runs.Add(reader, 25_000);
            }

            return runs;
        }
    }

    [Theory]
    [MemberData(nameof(Runs))]
    public void Read_DamagedInputs_EndsWithoutFaultInBoundedMemory(string reader, ulong inputs)
    {
        for (ulong number = 0; number < inputs; number++)
        {
            CaptureMutations.Read(reader, Seed, number);
        }
    }
}
