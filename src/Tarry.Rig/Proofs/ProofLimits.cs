namespace Tarry.Rig.Proofs;

/// <summary>What a rig must keep within to be trusted. Where no published source is named, it is common practice or from memory.</summary>
internal static class ProofLimits
{
    /// <summary>A wire from output to input: the firmware's own reading takes a few clock cycles.</summary>
    public const double WireDelayUs = 5;

    /// <summary>Through a usual optocoupler or by a phototransistor.</summary>
    public const double SlowDelayUs = 100;

    /// <summary>Scatter of a wire; interrupts that another part of the program holds up would show as more.</summary>
    public const double WireJitterUs = 1;

    /// <summary>Scatter through an optocoupler or by light.</summary>
    public const double SlowJitterUs = 10;

    /// <summary>A ceramic resonator is within this of its stated frequency, a crystal far within.</summary>
    public const double RateErrorPpm = 5000;

    /// <summary>A fit that is known less well than a crystal is without one helps nobody.</summary>
    public const double RateUncertaintyPpm = 50;

    /// <summary>The threshold keeps at least this far, in 1/256 of the supply, from the dark and the bright level.</summary>
    public const int ThresholdMargin = 8;

    /// <summary>Responses with more than one edge: a comparator without hysteresis gives some.</summary>
    public const double BounceShare = 0.01;

    /// <summary>A port that is opened in the middle of a line gives one bad frame.</summary>
    public const long BadFramesAtHost = 1;
}
