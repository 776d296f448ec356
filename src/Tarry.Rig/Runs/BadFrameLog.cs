using Tarry.Rig.Frames;

namespace Tarry.Rig.Runs;

/// <summary>Keeps bad frames until there is a journal, then writes them to it: a port opened in the middle of a line gives one at once.</summary>
internal sealed class BadFrameLog
{
    private const int KeptAtMost = 100;
    private readonly List<FrameResult> kept = [];
    private RunLedger? ledger;

    public void Add(FrameResult bad)
    {
        if (ledger is not null)
        {
            ledger.AddBadFrame(bad);
        }
        else if (kept.Count < KeptAtMost)
        {
            kept.Add(bad);
        }
    }

    public void WriteTo(RunLedger journal)
    {
        ledger = journal;
        kept.ForEach(journal.AddBadFrame);
        kept.Clear();
    }
}
