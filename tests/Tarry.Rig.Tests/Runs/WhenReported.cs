using Tarry.Rig.Runs;

namespace Tarry.Rig.Tests.Runs;

/// <summary>Does something at every report, at once.</summary>
internal sealed class WhenReported(Action<RunProgress> action) : IProgress<RunProgress>
{
    public void Report(RunProgress value) => action(value);
}
