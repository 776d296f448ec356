using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>Where things go in a figure of rows, mostly one a condition: heading, key, rows with labels beside or above their marks, axis, notes.</summary>
internal sealed class RowLayout
{
    /// <summary>White space around everything.</summary>
    public const double Margin = 1;

    private const double RankColumn = 4.8;
    private const double BoldWidth = 1.1;
    private const double HeadingSize = 1.25;
    private const double HeadingHeight = 1.6;
    private const double NoteSize = 0.85;
    private const double NoteHeight = 1.25;
    private const double AxisHeight = 3;
    private const double MostLabelEm = 17;
    private const double LeastLabelEm = 6;

    // A condition alone need not be as low as a row of many.
    private const double AloneTimes = 2.2;

    private readonly IReadOnlyList<string> headingLines;
    private readonly IReadOnlyList<string> noteLines;

    /// <summary>A layout of ranked conditions.</summary>
    public RowLayout(FigureStyle style, IReadOnlyList<RankedRow> rows, (double Least, double Greatest, double Narrow) pitches, double labelDetail, double rightColumn, double legendHeight, string heading, IReadOnlyList<string> notes)
        : this(style, [.. rows.Select(row => row.Condition.Id)], RankColumn, pitches, labelDetail, rightColumn, legendHeight, heading, notes)
    {
    }

    /// <summary>A layout for a style.</summary>
    /// <param name="style">What the figure is drawn for.</param>
    /// <param name="names">The name of each row.</param>
    /// <param name="leftColumn">Room left of the names where they go beside the marks.</param>
    /// <param name="pitches">Least and greatest height of a row where labels go beside the marks, and its height where they go above.</param>
    /// <param name="labelDetail">Room that text beneath the labels needs beside the marks.</param>
    /// <param name="rightColumn">Room right of the marks where labels go beside them.</param>
    /// <param name="legendHeight">Room for the key.</param>
    /// <param name="heading">Its heading.</param>
    /// <param name="notes">What is said below, a sentence each.</param>
    public RowLayout(FigureStyle style, IReadOnlyList<string> names, double leftColumn, (double Least, double Greatest, double Narrow) pitches, double labelDetail, double rightColumn, double legendHeight, string heading, IReadOnlyList<string> notes)
    {
        IsNarrow = style.IsNarrow;
        var width = style.Width / style.TextSize;
        noteLines = TextFit.Lines(string.Join(' ', notes), (width - (2 * Margin)) / NoteSize);
        var headingRoom = (width - (2 * Margin)) / (HeadingSize * BoldWidth);
        headingLines = TextFit.Lines(TextFit.Cut(PlainText.Clean(heading), 1.8 * headingRoom), headingRoom);
        LegendTop = Margin + (headingLines.Count * HeadingHeight) + 0.3;
        RowsTop = LegendTop + legendHeight + 1.6;
        var below = AxisHeight + (noteLines.Count * NoteHeight) + Margin;
        var count = Math.Max(names.Count, 1);
        var (least, greatest) = IsNarrow ? (pitches.Narrow, pitches.Narrow)
            : names.Count == 1 ? (AloneTimes * pitches.Least, AloneTimes * pitches.Greatest)
            : (pitches.Least, pitches.Greatest);
        Style = style.Fitted(RowsTop + below + (count * least));
        var room = Style.Height is { } height ? ((height / Style.TextSize) - RowsTop - below) / count : least;
        Pitch = Math.Clamp(room, least, Math.Max(least, greatest));
        RowsBottom = RowsTop + (count * Pitch);
        HeightEm = RowsBottom + below;

        var widthEm = Style.Width / Style.TextSize;
        var labels = names.Select(name => BoldWidth * TextFit.Width(name)).Append(labelDetail).Max() + 1.2;
        LabelLeft = IsNarrow ? Margin + 0.6 : Margin + leftColumn;
        PlotLeft = IsNarrow ? LabelLeft : LabelLeft + Math.Clamp(labels, LeastLabelEm, MostLabelEm);
        PlotRight = widthEm - Margin - (IsNarrow ? 0.6 : rightColumn + 1);
        Right = widthEm - Margin;
    }

    /// <summary>The style, its text made to fit.</summary>
    public FigureStyle Style { get; }

    /// <summary>Whether labels go above their marks.</summary>
    public bool IsNarrow { get; }

    /// <summary>The figure's height where the style leaves it open.</summary>
    public double HeightEm { get; }

    /// <summary>Where the key begins.</summary>
    public double LegendTop { get; }

    /// <summary>Where the rows begin.</summary>
    public double RowsTop { get; }

    /// <summary>Where the rows end and the axis stands.</summary>
    public double RowsBottom { get; }

    /// <summary>The height of a row.</summary>
    public double Pitch { get; }

    /// <summary>Where labels begin.</summary>
    public double LabelLeft { get; }

    /// <summary>The left end of the marks.</summary>
    public double PlotLeft { get; }

    /// <summary>The right end of the marks.</summary>
    public double PlotRight { get; }

    /// <summary>The right end of everything.</summary>
    public double Right { get; }

    /// <summary>The bracket of a tie group.</summary>
    public double BracketX => IsNarrow ? 0.5 : LabelLeft - 1;

    /// <summary>Room for a label.</summary>
    public double LabelRoom => IsNarrow ? Right - LabelLeft : PlotLeft - LabelLeft - 0.4;

    /// <summary>The heading.</summary>
    public void DrawHeading(Canvas canvas)
    {
        for (var line = 0; line < headingLines.Count; line++)
        {
            canvas.Text(Margin, Margin + (line * HeadingHeight) + 1, headingLines[line], "strong", size: HeadingSize);
        }
    }

    /// <summary>The heads of the columns left of the marks, where there are columns.</summary>
    public void DrawHeads(Canvas canvas)
    {
        if (!IsNarrow)
        {
            canvas.Text(Margin, RowsTop - 0.5, "rank", "soft", size: 0.9);
            canvas.Text(LabelLeft, RowsTop - 0.5, "condition", "soft", size: 0.9);
        }
    }

    /// <summary>The notes, below the axis.</summary>
    public void DrawNotes(Canvas canvas)
    {
        for (var line = 0; line < noteLines.Count; line++)
        {
            canvas.Text(Margin, RowsBottom + AxisHeight + ((line + 0.8) * NoteHeight), noteLines[line], "soft", size: NoteSize);
        }
    }
}
