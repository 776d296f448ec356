using Tarry.Findings.Conditions;
using Tarry.Findings.Shapes;

namespace Tarry.Reports.Figures;

/// <summary>The two panels of a distribution figure, one above the other on one axis of latency: densities, and distribution functions.</summary>
internal sealed class DistributionPanels
{
    private const double UpperShare = 0.56;
    private const double Gap = 1.5;

    /// <summary>Panels inside a layout of one tall row.</summary>
    public DistributionPanels(RowLayout layout, IReadOnlyList<RankedRow> rows)
    {
        Rows = rows;
        IReadOnlyList<DensityCurve> curves = [.. rows.Select(row => row.Condition.Density).OfType<DensityCurve>()];
        Axis = RidgePanels.Of(curves, PlotLeft(layout), layout.PlotRight, layout.IsNarrow ? 4 : 9);
        Top = layout.RowsTop;
        Bottom = layout.RowsBottom;
        UpperBase = Top + ((Bottom - Top) * UpperShare);
        LowerTop = UpperBase + Gap;
        var tallest = curves.SelectMany(curve => curve.PerMs).Concat(Fits(rows).SelectMany(fit => fit.PerMs)).DefaultIfEmpty(0).Max();
        Density = Scale.Linear(0, tallest > 0 ? tallest : 1, UpperBase, Top + 0.6);
        Share = Scale.Linear(0, 1, Bottom, LowerTop);
    }

    public IReadOnlyList<RankedRow> Rows { get; }

    /// <summary>The axis of latency, and its tail beyond a break.</summary>
    public RidgePanels Axis { get; }

    public double Top { get; }

    public double Bottom { get; }

    /// <summary>Where the densities stand.</summary>
    public double UpperBase { get; }

    /// <summary>Where all presses are answered.</summary>
    public double LowerTop { get; }

    /// <summary>From a density to a height.</summary>
    public Scale Density { get; }

    /// <summary>From a share of presses to a height.</summary>
    public Scale Share { get; }

    /// <summary>The right end of the axis of latency.</summary>
    public double Right => Axis.Tail is { } tail ? tail.At(tail.High) : Axis.Main.At(Axis.Main.High);

    /// <summary>The left end.</summary>
    public double Left => Axis.Main.At(Axis.Main.Low);

    /// <summary>The fitted shapes of the rows.</summary>
    public static IEnumerable<FittedCurve> Fits(IReadOnlyList<RankedRow> rows) => rows.Select(row => (row.Condition.Shape as ShapeFinding)?.Curve).OfType<FittedCurve>();

    // Room for the shares left of the panel, where it is wide.
    private static double PlotLeft(RowLayout layout) => layout.IsNarrow ? layout.LabelLeft : layout.LabelLeft + 3.2;
}
