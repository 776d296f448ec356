using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>One axis of a recording.</summary>
internal sealed class AxisRecording
{
    public AxisRecording(ReadOnlySpan<double> counts, StickRange range, AxisStep step, double[] levels)
    {
        Minimum = range.Minimum;
        StepCounts = step.Counts;
        StepIsShown = step.IsShown;
        Half = (range.Maximum - range.Minimum) / 2;
        Rescaling = range.Step is { } stated && step.Counts > stated ? 50 * stated / Half : 0;
        var middle = (range.Maximum + range.Minimum) / 2;
        Percent = new double[counts.Length];
        for (var i = 0; i < counts.Length; i++)
        {
            Percent[i] = 100 * (counts[i] - middle) / Half;
        }

        LevelPercent = new double[levels.Length];
        for (var i = 0; i < levels.Length; i++)
        {
            LevelPercent[i] = 100 * ((2 * levels[i]) - 1);
        }
    }

    private AxisRecording(AxisRecording whole, int[] kept)
    {
        (Minimum, StepCounts, StepIsShown, Half, Rescaling) = (whole.Minimum, whole.StepCounts, whole.StepIsShown, whole.Half, whole.Rescaling);
        Percent = [.. kept.Select(index => whole.Percent[index])];
        LevelPercent = whole.LevelPercent.Length == 0 ? [] : [.. kept.Select(index => whole.LevelPercent[index])];
    }

    /// <summary>The least count.</summary>
    public double Minimum { get; }

    /// <summary>The step between neighbouring positions, in counts; 0 where none is known.</summary>
    public double StepCounts { get; }

    /// <summary>Whether the axis is known to be no coarser than that.</summary>
    public bool StepIsShown { get; }

    /// <summary>Half the range, in counts.</summary>
    public double Half { get; }

    /// <summary>The positions, in per cent of half the range from its middle.</summary>
    public double[] Percent { get; }

    /// <summary>The true levels likewise, -100 at no supply and 100 at all of it; NaN where not known, empty where the recording has none.</summary>
    public double[] LevelPercent { get; }

    /// <summary>The step in per cent; 0 where none is known.</summary>
    public double Step => 100 * StepCounts / Half;

    /// <summary>By how much a coarser step that was scaled to the range may be off where it was rounded to counts, in per cent: half a count; else 0.</summary>
    public double Rescaling { get; }

    /// <summary>The axis at some of its positions.</summary>
    public AxisRecording Of(int[] kept) => new(this, kept);

    /// <summary>The position of an end of the range, in per cent.</summary>
    public static double End(bool upper) => upper ? 100 : -100;
}
