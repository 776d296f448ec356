using Tarry.Rig.Sticks.Recording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>Says on one line what to do with the stick now.</summary>
internal sealed class StickProgressLine(ProgressLine line) : IProgress<StickProgress>
{
    public void Report(StickProgress value) => line.Show(
        Invariant($"step {value.Step} of {value.Steps}: {value.Prompt} ({Math.Ceiling(value.SecondsLeft):0} s), {value.Readings} readings"));
}
