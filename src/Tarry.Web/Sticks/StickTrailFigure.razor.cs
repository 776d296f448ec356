using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;

namespace Tarry.Web.Sticks;

/// <summary>The positions of the last seconds, drawn.</summary>
public sealed partial class StickTrailFigure
{
    private const double Radius = 100;

    /// <summary>What is drawn.</summary>
    [Parameter]
    [EditorRequired]
    public required StickTrail Of { get; set; }

    private string Way
    {
        get
        {
            var path = new StringBuilder();
            foreach (var (x, y) in Of.Positions)
            {
                path.Append(path.Length == 0 ? 'M' : 'L').Append(Text(X(x))).Append(' ').Append(Text(Y(y)));
            }

            return path.ToString();
        }
    }

    private static double X(double x) => Radius * x;

    private static double Y(double y) => -Radius * y;

    private static string Text(double place) => place.ToString("0.#", CultureInfo.InvariantCulture);
}
