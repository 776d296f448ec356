namespace Tarry.Studies.Journals;

/// <summary>Up to which sequence number all are safe, when they may come in any order.</summary>
internal sealed class DurableSequences
{
    private readonly SortedSet<long> _beyondTheGap = [];

    public long Highest { get; private set; }

    public void Add(IEnumerable<long> sequences)
    {
        _beyondTheGap.UnionWith(sequences);
        while (_beyondTheGap.Remove(Highest + 1))
        {
            Highest++;
        }
    }
}
