using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;
using Tarry.Reports.Wording;

namespace Tarry.Web.Bench;

/// <summary>The latencies of a run so far, drawn.</summary>
public sealed partial class ShapeFigure
{
    private const double Width = 1000;
    private const double Height = 200;
    private const int MostTicks = 7;
    private static readonly double[] TickSteps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 50_000];

    /// <summary>What is drawn.</summary>
    [Parameter]
    [EditorRequired]
    public required LatencyShape Of { get; set; }

    /// <summary>The reference condition; null for none.</summary>
    [Parameter]
    public string? Reference { get; set; }

    private IEnumerable<(double Percent, string Text)> Ticks
    {
        get
        {
            var span = Of.ToMs - Of.FromMs;
            var step = TickSteps.First(candidate => span / candidate <= MostTicks || candidate == TickSteps[^1]);
            for (var at = Math.Ceiling(Of.FromMs / step) * step; at <= Of.ToMs; at += step)
            {
                yield return (Math.Round(100 * (at - Of.FromMs) / span, 2), Numbers.Milliseconds(Math.Round(at, 1)));
            }
        }
    }

    // Level over each class: a line that a window gets four times a second, and so as short as it can be.
    private string Outline(IReadOnlyList<double> shares, bool closed)
    {
        var top = Of.GreatestShare > 0 ? Of.GreatestShare : 1;
        var path = new StringBuilder(closed ? $"M0 {Height}" : "");
        for (var index = 0; index < shares.Count; index++)
        {
            var y = Height - (shares[index] / top * (Height - 4));
            path.Append(CultureInfo.InvariantCulture, $"{(path.Length == 0 ? 'M' : 'L')}{Width * index / shares.Count:0.#} {y:0.#}H{Width * (index + 1) / shares.Count:0.#}");
        }

        return closed ? path.Append(CultureInfo.InvariantCulture, $"V{Height}Z").ToString() : path.ToString();
    }
}
