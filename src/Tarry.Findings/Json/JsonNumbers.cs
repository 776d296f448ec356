using System.Globalization;
using System.Text.Json;
using Tarry.Findings.Comparisons;
using Tarry.Metrology;

namespace Tarry.Findings.Json;

/// <summary>How numbers and estimates are written, so that every machine writes the same digits.</summary>
internal static class JsonNumbers
{
    // A nanosecond, far below what a rig resolves and far above what the last bit of a logarithm can change.
    private const int Decimals = 6;

    public static void WriteMilliseconds(this Utf8JsonWriter json, string name, double milliseconds) =>
        json.WriteNumber(name, Rounded(milliseconds));

    public static void WriteNumberOrNull(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, Rounded(number));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    /// <summary>A probability, to six significant digits: a small one is not a zero.</summary>
    public static void WriteProbabilityOrNull(this Utf8JsonWriter json, string name, double? p)
    {
        if (p is { } number)
        {
            json.WriteNumber(name, double.Parse(number.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    public static void WriteEstimate<T>(this Utf8JsonWriter json, string name, EstimateOutcome<T> outcome, Func<T, double> number)
        where T : struct, IComparable<T>
    {
        json.WriteStartObject(name);
        switch (outcome)
        {
            case Estimate<T> estimate:
                json.WriteNumber("value", Rounded(number(estimate.Value)));
                json.WriteNumber("low", Rounded(number(estimate.Interval.Low)));
                json.WriteNumber("high", Rounded(number(estimate.Interval.High)));
                json.WriteNumber("level", estimate.Level);
                json.WriteString("method", estimate.Method);
                json.WriteNumber("trials", estimate.Trials);
                json.WriteNumber("sessions", estimate.Sessions);
                break;
            case NotEnough<T> not:
                json.WriteStartObject("not_enough");
                json.WriteNumber("have", not.Have);
                json.WriteNumber("need", not.Need);
                json.WriteString("of", not.Of);
                json.WriteEndObject();
                break;
            case AtMost<T> bounded:
                json.WriteNumber("at_most", Rounded(number(bounded.Bound)));
                json.WriteNumber("level", bounded.Level);
                json.WriteString("method", bounded.Method);
                json.WriteNumber("trials", bounded.Trials);
                json.WriteNumber("sessions", bounded.Sessions);
                break;
        }

        json.WriteEndObject();
    }

    /// <summary>A long row of numbers on one line.</summary>
    public static void WriteNumbers(this Utf8JsonWriter json, string name, IEnumerable<double> values)
    {
        json.WritePropertyName(name);
        json.WriteRawValue($"[{string.Join(',', values.Select(value => Rounded(value).ToString("R", CultureInfo.InvariantCulture)))}]");
    }

    /// <summary>What an interval was made from, to ten significant digits: enough to recompute it to the nanosecond.</summary>
    public static void WriteScatterOrNothing(this Utf8JsonWriter json, string name, ModeratedScatter? scatter)
    {
        if (scatter is null)
        {
            return;
        }

        json.WriteStartObject(name);
        json.WriteNumber("shared_variance_ms2", Significant(scatter.SharedVarianceMs2));
        json.WriteNumber("own_weight", Significant(scatter.OwnWeight));
        json.WriteNumber("degrees_of_freedom", Significant(scatter.DegreesOfFreedom));
        json.WriteEndObject();
    }

    private static double Significant(double value) =>
        double.Parse(value.ToString("G10", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    // Adding zero turns -0 into 0.
    public static double Rounded(double value) => Math.Round(value, Decimals, MidpointRounding.ToEven) + 0.0;
}
