using Tarry.Rig.Link;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;

namespace Tarry.Web.Sticks;

/// <summary>The rig reads the wipers.</summary>
internal sealed class RigStickWork(IRigPortSource source, StickCard card) : IStickWork
{
    /// <inheritdoc/>
    public StickCaptureResult Record(Study study, StudyLock held, IProgress<StickProgress> progress, Func<bool> discards, CancellationToken stop) =>
        new StickCapture(study, held, card.Key).Record(source, card.Request, progress, stop, discards);

    /// <inheritdoc/>
    public void Dispose()
    {
        // The recorder opens the port and closes it.
    }
}
