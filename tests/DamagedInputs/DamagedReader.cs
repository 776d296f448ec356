using Tarry.Metrology;

namespace Tarry.DamagedInputs;

/// <summary>A reader, what it reads, and what it may do when that is damaged: whatever the bytes, it ends, in bounded memory, and says what it found or refuses by name.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Valid">Small valid inputs.</param>
/// <param name="Words">Words that mean something to it; a character is a byte.</param>
/// <param name="Read">Reads an input, and throws where what comes out cannot be.</param>
internal sealed record DamagedReader(string Name, byte[][] Valid, string[] Words, Action<byte[]> Read)
{
    /// <summary>Whether an exception is a refusal by name; whatever else is thrown is a fault.</summary>
    public Func<Exception, bool> IsRefusal { get; init; } = _ => false;

    /// <summary>What a reader may allocate whatever the input, bytes: its buffers.</summary>
    public long MostAllocated { get; init; } = 4_000_000;

    /// <summary>And for each byte of the input.</summary>
    public long MostAllocatedPerByte { get; init; } = 500;

    /// <summary>Inputs of other formats, which a file may hold that is called as one of this format.</summary>
    public byte[][] Foreign { get; init; } = [];

    /// <summary>Reads one damaged input.</summary>
    /// <param name="seed">The seed of the run.</param>
    /// <param name="number">Which input of the run.</param>
    /// <exception cref="InvalidOperationException">The reader failed in a way that it must not; the message says with which input.</exception>
    public void ReadDamaged(ulong seed, ulong number)
    {
        var input = DamagedBytes.Of(Valid, Words, Foreign, SeededGenerator.ForPart(seed, number));
        var before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            Read(input);
        }
        catch (Exception refused) when (IsRefusal(refused))
        {
            // As it should be.
        }
        catch (Exception failure)
        {
            throw new InvalidOperationException($"{Name}, seed {seed}, input {number}: {failure.GetType().Name}: {failure.Message}\n{Shown(input)}", failure);
        }

        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        if (allocated > MostAllocated + (MostAllocatedPerByte * input.Length))
        {
            throw new InvalidOperationException($"{Name}, seed {seed}, input {number}: {allocated} bytes were allocated for {input.Length}\n{Shown(input)}");
        }
    }

    private static string Shown(byte[] input) => Convert.ToHexString(input.AsSpan(0, Math.Min(input.Length, 4_096)));
}
