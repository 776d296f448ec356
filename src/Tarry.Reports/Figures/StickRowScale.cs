using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>The upright scale of a row about a stick: its zero line, and what its upper end stands for.</summary>
internal static class StickRowScale
{
    /// <summary>Draws it.</summary>
    public static void Draw(Canvas canvas, Scale across, Scale up, string unit)
    {
        canvas.Line(across.At(across.Low), up.At(0), across.At(across.High), up.At(0), "axis", 0.06);
        canvas.Text(across.At(across.Low) + 0.3, up.At(up.High) + 0.9, $"{Numbers.Plain(up.High)}{Numbers.NoBreakSpace}{unit}", "soft", size: 0.75);
        canvas.Text(across.At(across.Low) + 0.3, up.At(up.Low) - 0.3, $"{Numbers.Plain(up.Low)}{Numbers.NoBreakSpace}{unit}", "soft", size: 0.75);
    }
}
