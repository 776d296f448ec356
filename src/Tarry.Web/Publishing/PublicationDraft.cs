using Tarry.Reports.Documents;

namespace Tarry.Web.Publishing;

/// <summary>What is to be published of a study, and how.</summary>
public sealed record PublicationDraft
{
    /// <summary>The version of a data package before any other is given.</summary>
    public const string FirstVersion = "1.0.0";

    /// <summary>A title other than the study's; null for the study's.</summary>
    public string? Title { get; init; }

    /// <summary>Notes to readers; null for none.</summary>
    public string? Notes { get; init; }

    /// <summary>Whether the report is written.</summary>
    public bool Report { get; init; } = true;

    /// <summary>Whether figures are written.</summary>
    public bool Figures { get; init; } = true;

    /// <summary>Whether tables are written.</summary>
    public bool Tables { get; init; }

    /// <summary>Whether a data package is written.</summary>
    public bool Package { get; init; }

    /// <summary>The names of the figures that are left out.</summary>
    public IReadOnlySet<string> LeftOut { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The licence of the data package by its SPDX identifier; null for none.</summary>
    public string? Licence { get; init; }

    /// <summary>Who publishes it; null for nobody named.</summary>
    public string? Author { get; init; }

    /// <summary>The version of the data package.</summary>
    public string Version { get; init; } = FirstVersion;

    /// <summary>A folder inside <c>report/</c>; null for that one itself.</summary>
    public string? Subfolder { get; init; }

    /// <summary>What stands before the report.</summary>
    public ReportPreface Preface => new(Title, Notes, LeftOut);

    /// <summary>Whether anything is to be written.</summary>
    public bool IsEmpty => !(Report || Figures || Tables || Package);
}
