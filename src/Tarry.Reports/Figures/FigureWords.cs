namespace Tarry.Reports.Figures;

/// <summary>What a figure says beside its marks.</summary>
/// <param name="Name">Its name, for ids.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Title">Its title for assistive technology.</param>
/// <param name="Description">What it shows, in full, for those who cannot see it.</param>
/// <param name="Notes">What is said below, a sentence each.</param>
internal sealed record FigureWords(string Name, string Heading, string Title, string Description, IReadOnlyList<string> Notes);
