using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>What stands about a square panel.</summary>
/// <param name="Name">Its name, above.</param>
/// <param name="Beneath">What is said beneath, a line each where there is room.</param>
/// <param name="Verdict">What is wrong in it, below that; null where it judges nothing.</param>
internal sealed record PanelCaption(string Name, IReadOnlyList<string> Beneath, StickVerdict? Verdict = null)
{
    /// <summary>The lines beneath, with the style of each.</summary>
    /// <param name="roomEm">Room for a line, in its own size.</param>
    public IReadOnlyList<(string Text, string CssClass)> Lines(double roomEm) =>
    [
        .. Beneath.SelectMany(line => TextFit.Lines(line, roomEm)).Select(line => (line, "soft")),
        .. Verdict is null ? [] : TextFit.Lines(Verdict.Text, roomEm).Select(line => (line, Verdict.IsFault ? "strong" : "soft")),
    ];
}
