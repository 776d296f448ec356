using System.Xml.Linq;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Where things go in a figure of square panels, mostly one a condition: heading, panels in rows with their captions, notes.</summary>
internal sealed class SquarePanels
{
    private const double Margin = 1;
    private const double HeadingSize = 1.25;
    private const double HeadingHeight = 1.6;
    private const double NoteSize = 0.85;
    private const double NoteHeight = 1.25;
    private const double Gap = 1.6;
    private const double NameHeight = 1.5;
    private const double LineHeight = 1.1;
    private const double LeastSide = 18;
    private const double MostSide = 26;

    private readonly IReadOnlyList<string> headingLines;
    private readonly IReadOnlyList<string> noteLines;
    private readonly IReadOnlyList<PanelCaption> captions;
    private readonly int columns;
    private readonly double beneath;
    private readonly double lineRoom;

    private SquarePanels(FigureStyle style, FigureWords words, IReadOnlyList<PanelCaption> captions)
    {
        this.captions = captions;
        var count = captions.Count;
        var width = style.Width / style.TextSize;
        columns = Math.Clamp((int)((width - (2 * Margin) + Gap) / (LeastSide + Gap)), 1, count);
        var rows = (count + columns - 1) / columns;
        columns = (count + rows - 1) / rows;
        headingLines = TextFit.Lines(PlainText.Clean(words.Heading), (width - (2 * Margin)) / (HeadingSize * 1.1));
        noteLines = TextFit.Lines(string.Join(' ', words.Notes), (width - (2 * Margin)) / NoteSize);
        Top = Margin + (headingLines.Count * HeadingHeight) + 0.6;
        Side = Math.Min(MostSide, (width - (2 * Margin) - ((columns - 1) * Gap)) / columns);
        // Bold words are wider. A fixed height may make the panels as small as they may be.
        lineRoom = (style.Height is null ? Side : LeastSide) / NoteSize / 1.1;
        beneath = 1 + (captions.Max(caption => caption.Lines(lineRoom).Count) * LineHeight);
        var below = (noteLines.Count * NoteHeight) + Margin;
        Style = style.Fitted(Top + below + (rows * (LeastSide + NameHeight + beneath)));
        if (Style.Height is { } height)
        {
            var room = ((height / Style.TextSize) - Top - below) / rows;
            var across = ((Style.Width / Style.TextSize) - (2 * Margin) - ((columns - 1) * Gap)) / columns;
            Side = Math.Min(across, room - NameHeight - beneath);
        }

        HeightEm = Top + below + (rows * (Side + NameHeight + beneath));
    }

    /// <summary>The side of a panel.</summary>
    public double Side { get; }

    private FigureStyle Style { get; }

    private double HeightEm { get; }

    private double Top { get; }

    /// <summary>Draws a figure of panels, at least one.</summary>
    /// <param name="style">What it is drawn for.</param>
    /// <param name="words">What it says.</param>
    /// <param name="shown">What each panel shows.</param>
    /// <param name="captionOf">What stands about it.</param>
    /// <param name="draw">Draws what is in it, given its left and top end.</param>
    public static XElement Draw<T>(FigureStyle style, FigureWords words, IReadOnlyList<T> shown, Func<T, PanelCaption> captionOf, Action<Canvas, SquarePanels, double, double, T> draw)
    {
        var panels = new SquarePanels(style, words, [.. shown.Select(captionOf)]);
        var canvas = new Canvas(panels.Style, panels.HeightEm, words.Name, words.Title, words.Description);
        panels.DrawText(canvas);
        for (var index = 0; index < shown.Count; index++)
        {
            var (left, top) = panels.Place(canvas, index);
            draw(canvas, panels, left, top, shown[index]);
            panels.DrawCaption(canvas, panels.captions[index], left, top);
        }

        return canvas.Root;
    }

    private (double Left, double Top) Place(Canvas canvas, int index)
    {
        var used = (columns * Side) + ((columns - 1) * Gap);
        var left = ((canvas.WidthEm - used) / 2) + (index % columns * (Side + Gap));
        return (left, Top + NameHeight + (index / columns * (Side + NameHeight + beneath)));
    }

    private void DrawText(Canvas canvas)
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

    private void DrawCaption(Canvas canvas, PanelCaption caption, double left, double top)
    {
        canvas.Text(left, top - 0.5, caption.Name, "strong", room: Side / 1.1);
        var lines = caption.Lines(lineRoom);
        for (var line = 0; line < lines.Count; line++)
        {
            canvas.Text(left + (Side / 2), top + Side + 1 + (line * LineHeight), lines[line].Text, lines[line].CssClass, Anchor.Middle, NoteSize, Side);
        }
    }
}
