using System.Globalization;

namespace Tarry.Metrology;

/// <summary>
/// A counting timer: its stated frequency, and what a fit against a better clock says of the truth.
/// </summary>
/// <remarks>
/// elapsed = ticks / (nominal frequency x (1 + rate error)). The rate error is positive when the timer runs fast.
/// Recordings keep ticks; this is where they become time.
/// </remarks>
public readonly record struct TimerClock
{
    /// <summary>A timer at its nominal frequency, with an optional fitted rate error.</summary>
    /// <param name="nominalHz">Ticks a second as stated, more than zero.</param>
    /// <param name="rateErrorPpm">How much faster than stated it runs, in parts per million, within +-100,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or the error is out of range.</exception>
    public TimerClock(long nominalHz, double rateErrorPpm = 0)
    {
        if (nominalHz <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(nominalHz), nominalHz, "A timer counts at least one tick a second; check tick_hz.");
        }

        if (!(Math.Abs(rateErrorPpm) <= 100_000))
        {
            throw new ArgumentOutOfRangeException(nameof(rateErrorPpm), rateErrorPpm, "A rate error lies within +-100,000 ppm; a larger one means a wrong nominal frequency.");
        }

        NominalHz = nominalHz;
        RateErrorPpm = rateErrorPpm;
    }

    /// <summary>Ticks a second as stated.</summary>
    public long NominalHz { get; }

    /// <summary>How much faster than stated the timer runs, in parts per million.</summary>
    public double RateErrorPpm { get; }

    /// <summary>The time that a number of ticks took, in microseconds.</summary>
    public double ToMicroseconds(long ticks) => ticks * 1e6 / (NominalHz * (1 + (RateErrorPpm / 1e6)));

    /// <summary>The nearest number of ticks in a time.</summary>
    public long ToTicks(double microseconds) =>
        (long)Math.Round(microseconds * NominalHz * (1 + (RateErrorPpm / 1e6)) / 1e6, MidpointRounding.AwayFromZero);

    /// <summary>The frequency and the rate error, for people.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{NominalHz} Hz {RateErrorPpm:+0.0;-0.0;+0.0} ppm");
}
