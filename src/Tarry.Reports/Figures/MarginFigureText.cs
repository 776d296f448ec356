namespace Tarry.Reports.Figures;

/// <summary>The words of a figure of differences over the margin.</summary>
/// <param name="Name">For ids.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Title">Its title for assistive technology.</param>
/// <param name="Lead">Begins its description.</param>
/// <param name="RowHead">What the rows are.</param>
/// <param name="NumbersHead">What the numbers are.</param>
/// <param name="AxisTitle">What the axis is of.</param>
/// <param name="Direction">What lies right of zero.</param>
internal sealed record MarginFigureText(string Name, string Heading, string Title, string Lead, string RowHead, string NumbersHead, string AxisTitle, string Direction);
