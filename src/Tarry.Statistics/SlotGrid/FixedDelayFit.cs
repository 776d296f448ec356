using Tarry.Statistics.Distributions;

namespace Tarry.Statistics.SlotGrid;

/// <summary>
/// The fixed delay of one series: where the window of (frame - slot) starts, if its ends are blurred by frames or slots that jitter.
/// </summary>
/// <remarks>
/// Without jitter (frame - slot) is uniform on F..F + T2; jitter of standard deviation s convolves that with a normal distribution.
/// Late and retried responses lie outside in steps of their own. With B the blurred box and B0, B1 what lies under and over it within
/// three tenths of T2, F and s are those of the largest likelihood of a B + b0 B0 + b1 B1; a, b0 and b1 follow by expectation and
/// maximisation. The place of the frames is that of the responses from the middle of the window: towards its ends those frames are
/// seen that came late at its start, or early at its end. The standard error is of the curvature in F, of that place, and of the slots'
/// phase, whose change points lie T2/n apart.
/// </remarks>
internal sealed class FixedDelayFit
{
    private const double Margin = 0.3;
    private const double FirstBlur = 1e-4;
    private const double LeastBlur = 4e-6;
    private const double FirstStep = 4e-5;
    private const double LastStep = 5e-7;
    private const int Maximisations = 3;
    private const double Saturated = 6;
    private const double SlotPhaseSteps = 2;

    private readonly double[] values;
    private readonly double width;
    private readonly double low;
    private readonly double high;
    private readonly double[] rise;
    private readonly double[] fall;
    private double below;
    private double above;

    private FixedDelayFit(double[] values, double width, double start)
    {
        this.width = width;
        (low, high) = (start - (Margin * width), start + ((1 + Margin) * width));
        this.values = Array.FindAll(values, value => value > low && value < high);
        (rise, fall) = (new double[this.values.Length], new double[this.values.Length]);
        (below, above) = (0.02, 0.02);
    }

    /// <summary>The fixed delay with its standard error and the blur of the window's ends, all in seconds.</summary>
    /// <param name="values">From the slot of each press to its frame.</param>
    /// <param name="residuals">From that frame to the response, as far as it is known which.</param>
    /// <param name="width">The frame interval.</param>
    /// <param name="start">Where the fullest window starts.</param>
    public static FixedDelayMeasured Of(double[] values, double[] residuals, double width, double start)
    {
        var fit = new FixedDelayFit(values, width, start);
        var (delay, blur) = fit.Largest(start);
        var edge = fit.StandardError(delay, blur);
        var (place, error) = Place(values, residuals, delay, width, blur);
        var slot = SlotPhaseSteps * width / fit.values.Length;
        return new FixedDelayMeasured(delay + place, Math.Sqrt((edge * edge) + (error * error) + (slot * slot)), blur);
    }

    private static (double Mean, double StandardError) Place(double[] values, double[] residuals, double delay, double width, double blur)
    {
        var aside = Math.Min(3 * blur, width / 4);
        var (n, sum, squares) = (0, 0.0, 0.0);
        for (var i = 0; i < values.Length; i++)
        {
            if (values[i] > delay + aside && values[i] < delay + width - aside)
            {
                n++;
                sum += residuals[i];
                squares += residuals[i] * residuals[i];
            }
        }

        return n < 2 ? (0, width) : (sum / n, Math.Sqrt((squares - (sum * sum / n)) / (n - 1) / n));
    }

    // Steps of the delay and of the logarithm of the blur, halved where none helps.
    private (double Delay, double Blur) Largest(double start)
    {
        var (delay, blur) = (start, FirstBlur);
        var best = LogLikelihood(delay, blur);
        for (var (step, factor) = (FirstStep, 2.0); step > LastStep; step /= 2, factor = Math.Sqrt(factor))
        {
            for (var moved = true; moved;)
            {
                moved = Try(delay - step, blur) || Try(delay + step, blur);
                moved |= Try(delay, Math.Max(blur / factor, LeastBlur)) || Try(delay, blur * factor);
            }
        }

        return (delay, blur);

        bool Try(double otherDelay, double otherBlur)
        {
            if (Math.Abs(otherDelay - start) > Margin * width / 2 || otherBlur > Margin * width)
            {
                return false;
            }

            var found = LogLikelihood(otherDelay, otherBlur);
            if (!(found > best))
            {
                return false;
            }

            (delay, blur, best) = (otherDelay, otherBlur, found);
            return true;
        }
    }

    private double StandardError(double delay, double blur)
    {
        var step = Math.Max(blur / 2, width / values.Length);
        var bend = LogLikelihood(delay - step, blur) + LogLikelihood(delay + step, blur) - (2 * LogLikelihood(delay, blur));
        return bend < 0 ? step / Math.Sqrt(-bend) : width;
    }

    private double LogLikelihood(double delay, double blur)
    {
        for (var i = 0; i < values.Length; i++)
        {
            rise[i] = Passed((values[i] - delay) / blur);
            fall[i] = Passed((values[i] - delay - width) / blur);
        }

        var logLikelihood = 0.0;
        var (under, over) = (delay - low, high - delay - width);
        for (var pass = 0; pass <= Maximisations; pass++)
        {
            var (b0, b1, a) = (below / under, above / over, (1 - below - above) / width);
            var (inBelow, inAbove) = (0.0, 0.0);
            logLikelihood = 0;
            for (var i = 0; i < values.Length; i++)
            {
                var (first, last) = (b0 * (1 - rise[i]), b1 * fall[i]);
                var density = first + last + (a * (rise[i] - fall[i]));
                logLikelihood += Math.Log(density);
                inBelow += first / density;
                inAbove += last / density;
            }

            // One response more than there are keeps each share off zero.
            below = (inBelow + 0.1) / (values.Length + 0.3);
            above = (inAbove + 0.1) / (values.Length + 0.3);
        }

        return logLikelihood;
    }

    private static double Passed(double z) => z > Saturated ? 1 : z < -Saturated ? 0 : NormalDistribution.Cdf(z);
}
