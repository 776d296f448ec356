using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;
using Tarry.Reports.Wording;

namespace Tarry.Web.Bench;

/// <summary>The newest latencies of a run, drawn one by one.</summary>
public sealed partial class StripFigure
{
    private const int Places = 300;
    private const double Width = 1000;
    private const double Height = 100;

    /// <summary>The latencies, ms, oldest first, at least one.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<double> Newest { get; set; }

    /// <summary>Whose scale they are drawn at; what lies beyond it is drawn at its edge.</summary>
    [Parameter]
    [EditorRequired]
    public required LatencyShape Scale { get; set; }

    private string Dots
    {
        get
        {
            var path = new StringBuilder();
            for (var index = 0; index < Newest.Count; index++)
            {
                var x = Width * (Places - Newest.Count + index + 0.5) / Places;
                var y = Height * (1 - Math.Clamp((Newest[index] - Scale.FromMs) / (Scale.ToMs - Scale.FromMs), 0, 1));
                path.Append(CultureInfo.InvariantCulture, $"M{x:0} {y:0}h0");
            }

            return path.ToString();
        }
    }
}
