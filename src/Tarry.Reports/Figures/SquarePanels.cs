using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Where things go in a figure of square panels, one a condition: heading, panels in rows under their names, notes.</summary>
internal sealed class SquarePanels
{
    private const double Margin = 1;
    private const double HeadingSize = 1.25;
    private const double HeadingHeight = 1.6;
    private const double NoteSize = 0.85;
    private const double NoteHeight = 1.25;
    private const double Gap = 1.6;
    private const double NameHeight = 1.5;
    private const double Beneath = 3;
    private const double LeastSide = 18;
    private const double MostSide = 26;

    private readonly IReadOnlyList<string> headingLines;
    private readonly IReadOnlyList<string> noteLines;
    private readonly int columns;

    /// <summary>A layout for a style.</summary>
    /// <param name="style">What the figure is drawn for.</param>
    /// <param name="count">How many panels.</param>
    /// <param name="heading">Its heading.</param>
    /// <param name="notes">What is said below, a sentence each.</param>
    public SquarePanels(FigureStyle style, int count, string heading, IReadOnlyList<string> notes)
    {
        var width = style.Width / style.TextSize;
        columns = Math.Clamp((int)((width - (2 * Margin) + Gap) / (LeastSide + Gap)), 1, Math.Max(1, count));
        var rows = (count + columns - 1) / columns;
        headingLines = TextFit.Lines(PlainText.Clean(heading), (width - (2 * Margin)) / (HeadingSize * 1.1));
        noteLines = TextFit.Lines(string.Join(' ', notes), (width - (2 * Margin)) / NoteSize);
        Top = Margin + (headingLines.Count * HeadingHeight) + 0.6;
        var below = (noteLines.Count * NoteHeight) + Margin;
        Side = Math.Min(MostSide, (width - (2 * Margin) - ((columns - 1) * Gap)) / columns);
        Style = style.Fitted(Top + below + (rows * (LeastSide + NameHeight + Beneath)));
        if (Style.Height is { } height)
        {
            var room = ((height / Style.TextSize) - Top - below) / rows;
            var across = ((Style.Width / Style.TextSize) - (2 * Margin) - ((columns - 1) * Gap)) / columns;
            Side = Math.Min(across, room - NameHeight - Beneath);
        }

        HeightEm = Top + below + (rows * (Side + NameHeight + Beneath));
    }

    /// <summary>The style, its text made to fit.</summary>
    public FigureStyle Style { get; }

    /// <summary>The figure's height where the style leaves it open.</summary>
    public double HeightEm { get; }

    /// <summary>The side of a panel.</summary>
    public double Side { get; }

    private double Top { get; }

    /// <summary>The left and the top end of a panel, its name above it.</summary>
    public (double Left, double Top) Place(Canvas canvas, int index)
    {
        var used = (columns * Side) + ((columns - 1) * Gap);
        var left = ((canvas.WidthEm - used) / 2) + (index % columns * (Side + Gap));
        return (left, Top + NameHeight + (index / columns * (Side + NameHeight + Beneath)));
    }

    /// <summary>Heading and notes.</summary>
    public void DrawText(Canvas canvas)
    {
        for (var line = 0; line < headingLines.Count; line++)
        {
            canvas.Text(Margin, Margin + (line * HeadingHeight) + 1, headingLines[line], "strong", size: HeadingSize);
        }

        var top = canvas.HeightEm - (noteLines.Count * NoteHeight) - (Margin / 2);
        for (var line = 0; line < noteLines.Count; line++)
        {
            canvas.Text(Margin, top + ((line + 0.6) * NoteHeight), noteLines[line], "soft", size: NoteSize);
        }
    }

    /// <summary>A panel's name, and what stands beneath it.</summary>
    public void DrawName(Canvas canvas, int index, string name, params IReadOnlyList<string> beneath)
    {
        var (left, top) = Place(canvas, index);
        canvas.Text(left, top - 0.5, name, "strong", room: Side);
        for (var line = 0; line < beneath.Count; line++)
        {
            canvas.Text(left + (Side / 2), top + Side + 1 + (line * 1.1), beneath[line], "soft", Anchor.Middle, NoteSize, Side);
        }
    }
}
