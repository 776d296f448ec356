using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.DeviceOnly;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The device alone: a row a condition, left its latencies as measured, right what is left of them without the chain, both at one scale.</summary>
public static class DeviceOnlyFigure
{
    private static readonly (double Least, double Greatest, double Narrow) Pitches = (3.1, 5, 5.6);

    /// <summary>The figure as SVG text with real text in it; the same bytes for the same document and style.</summary>
    public static string Draw(FindingsDocument document, FigureStyle style) => FigureSvg.Text(document, style, Build);

    /// <summary>Whether a study has a density to draw.</summary>
    public static bool IsWorthDrawing(FindingsDocument document) => document.Conditions.Any(condition => condition.DeviceOnly?.Density is not null);

    internal static XElement Build(FindingsDocument document, FigureStyle style)
    {
        IReadOnlyList<RankedRow> rows = [.. RankedRow.Of(document).Where(row => row.Condition.DeviceOnly is not null)];
        var steps = style.IsNarrow ? 5 : 12;
        var draft = DeviceOnlyPanels.Of(rows, 0, 1, steps);
        var layout = new RowLayout(style, rows, Pitches, 0, RowLabels.RightColumn(rows, Mean, Deviation), 0, $"The device alone: {document.Title}", Notes(rows, draft));
        var panels = DeviceOnlyPanels.Of(rows, layout.PlotLeft, layout.PlotRight, steps);
        var canvas = new Canvas(layout.Style, layout.HeightEm, "device-only", $"{document.Title}: the device alone", Description(rows));

        layout.DrawHeading(canvas);
        layout.DrawHeads(canvas);
        if (!layout.IsNarrow)
        {
            canvas.Text(layout.Right, layout.RowsTop - 0.5, "alone: mean and sd, ms", "soft", Anchor.End, 0.9);
        }

        DrawAxis(canvas, panels.Measured, panels.MeasuredTicks, layout, layout.IsNarrow ? "measured, ms" : "latency as measured, ms");
        DrawAxis(canvas, panels.Alone, panels.AloneTicks, layout, layout.IsNarrow ? "alone, ms" : "device alone, ms");
        for (var index = 0; index < rows.Count; index++)
        {
            var top = layout.RowsTop + (index * layout.Pitch);
            if (index > 0)
            {
                canvas.Line(layout.IsNarrow ? layout.LabelLeft : RowLayout.Margin, top, layout.Right, top, "rule", 0.06);
            }

            RowLabels.Draw(canvas, rows[index], layout, top, top + (layout.Pitch / 2), Mean(rows[index]), Deviation(rows[index]));
            DeviceOnlyMarks.Draw(canvas, rows[index], panels, top + layout.Pitch - 0.45, layout.IsNarrow ? 2.3 : layout.Pitch - 0.9);
        }

        layout.DrawNotes(canvas);
        return canvas.Root;
    }

    internal static string Description(IReadOnlyList<RankedRow> rows)
    {
        var lines = rows.Select(row =>
        {
            var alone = row.Condition.DeviceOnly!;
            var density = alone.Refusal is { } refusal ? $" No density: {DeviceOnlyWording.Sentence(refusal)}" : "";
            return $"{row.Condition.Id}: mean {EstimateWording.ClaimOrLack(alone.Mean, Quantity.Scatter)}, sd {EstimateWording.ClaimOrLack(alone.StandardDeviation, Quantity.Scatter)}.{density}";
        });
        return $"The delay of each device without the chain, beside its latencies as measured. {string.Join(' ', lines)}";
    }

    private static List<string> Notes(IReadOnlyList<RankedRow> rows, DeviceOnlyPanels panels)
    {
        var densities = rows.Select(row => row.Condition.DeviceOnly!.Density).OfType<DeviceOnlyDensity>().ToList();
        var notes = new List<string>
        {
            $"{FigureNotes.Basis(rows)} Both panels at one scale; each density to its own height.",
        };
        if (densities.Count > 0)
        {
            notes.Add($"Pale band of the device alone: {Numbers.Level(densities[0].Level)}, {DeviceOnlyWording.Band}. The dot with its bar is the mean with its 95{Numbers.NoBreakSpace}% interval.");
        }

        if (rows.Any(row => row.Condition is { BlockWidth.Width: not null, DeviceOnly.Density: not null }))
        {
            notes.Add("Dashed outline: the block that waiting for the device's own slot alone would make, as wide as the shape of the latencies says, about the density's median.");
        }

        if (rows.Select(row => row.Condition.DeviceOnly!).Select(alone => alone.ReferenceSlot).FirstOrDefault(known => known is not null) is { } slot)
        {
            notes.Add("Zero: the reference's fixed delay; the wait for the device's own report slot is inside.");
            notes.Add(slot.Source switch
            {
                ReferenceSlotSource.Declared => $"Taken out: the chain as the reference measured it, whose own slot is declared as {Numbers.Milliseconds(slot.IntervalMs)}.",
                ReferenceSlotSource.Measured => $"Taken out: the chain as the reference measured it, whose own slot was found to be {Numbers.Milliseconds(slot.IntervalMs)}.",
                _ => $"Taken out: the chain as the reference measured it, whose own slot is assumed to be {Numbers.Milliseconds(slot.IntervalMs)}, as no report rate is declared.",
            });
        }

        if (panels.IsCut)
        {
            notes.Add("Late responses beyond the axes are not drawn.");
        }

        if (densities.Count < rows.Count)
        {
            notes.Add("Words in place of a density: why there is none; device_only.refusal in findings.json says more.");
        }

        return notes;
    }

    private static void DrawAxis(Canvas canvas, Scale scale, Ticks ticks, RowLayout layout, string title) =>
        AxisDrawing.Draw(canvas, scale, ticks.Values, ticks.Decimals, layout.RowsTop, layout.RowsBottom, title, scale.At(scale.High) - scale.At(scale.Low));

    private static string Mean(RankedRow row) => row.Condition.DeviceOnly!.Mean is Estimate<LatencyDifference> mean
        ? $"mean {EstimateWording.Value(mean, Quantity.Scatter)} ({EstimateWording.Bounds(mean, Quantity.Scatter)})"
        : "mean: not known";

    private static string Deviation(RankedRow row) => row.Condition.DeviceOnly!.StandardDeviation switch
    {
        Estimate<LatencyDifference> deviation => $"sd {EstimateWording.Value(deviation, Quantity.Scatter)} ({EstimateWording.Bounds(deviation, Quantity.Scatter)})",
        AtMost<LatencyDifference> bound => $"sd {EstimateWording.Bound(bound, Quantity.Scatter)}",
        _ => "sd: not known",
    };
}
