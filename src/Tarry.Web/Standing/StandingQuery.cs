using Microsoft.AspNetCore.WebUtilities;
using Tarry.Findings;
using Tarry.Reports.Merits;

namespace Tarry.Web.Standing;

/// <summary>What the address of the standing asks for: by what it is sorted, which conditions and which columns it shows.</summary>
public sealed record StandingQuery
{
    private const string SortKey = "sort";
    private const string ColumnsKey = "show";
    private static readonly string[] UsualColumns = ["mean", "relative", "p95", "sd", "late"];

    /// <summary>By which figure it is sorted.</summary>
    public required FigureOfMerit Sort { get; init; }

    /// <summary>Whether the greatest stands first.</summary>
    public required bool GreatestFirst { get; init; }

    /// <summary>The columns, in their usual order.</summary>
    public required IReadOnlyList<FigureOfMerit> Columns { get; init; }

    /// <summary>Factors that must be of a level, in the order of their names.</summary>
    public required IReadOnlyDictionary<string, string> Levels { get; init; }

    /// <summary>Reads an address; what it asks for and there is not, is left aside.</summary>
    /// <param name="address">The address with its query.</param>
    /// <param name="document">The findings, whose factors may be named.</param>
    public static StandingQuery Parse(Uri address, FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(address);
        ArgumentNullException.ThrowIfNull(document);
        var asked = QueryHelpers.ParseQuery(address.Query);
        var sort = asked.GetValueOrDefault(SortKey).ToString();
        var columns = asked.TryGetValue(ColumnsKey, out var shown) ? shown.ToString().Split(',') : UsualColumns;
        var factors = document.Conditions.SelectMany(condition => condition.Factors.Keys).ToHashSet(StringComparer.Ordinal);
        return new StandingQuery
        {
            Sort = FiguresOfMerit.Find(sort.TrimStart('-')) ?? FiguresOfMerit.Mean,
            GreatestFirst = sort.StartsWith('-'),
            Columns = [.. FiguresOfMerit.All.Where(figure => columns.Contains(figure.Key))],
            Levels = new SortedDictionary<string, string>(
                asked.Where(entry => factors.Contains(entry.Key) && entry.Value.ToString().Length > 0).ToDictionary(entry => entry.Key, entry => entry.Value.ToString()),
                StringComparer.Ordinal),
        };
    }

    /// <summary>Its address within the study.</summary>
    public string Address
    {
        get
        {
            var parts = Levels.Select(level => (level.Key, level.Value)).ToList();
            if (Sort != FiguresOfMerit.Mean || GreatestFirst)
            {
                parts.Insert(0, (SortKey, (GreatestFirst ? "-" : "") + Sort.Key));
            }

            if (!Columns.Select(column => column.Key).SequenceEqual(UsualColumns))
            {
                parts.Add((ColumnsKey, string.Join(',', Columns.Select(column => column.Key))));
            }

            return "standing" + (parts.Count == 0 ? "" : "?" + string.Join('&', parts.Select(part => $"{Uri.EscapeDataString(part.Item1)}={Uri.EscapeDataString(part.Item2)}")));
        }
    }

    /// <summary>Sorted by a figure; the other way round where it is sorted by it already.</summary>
    public StandingQuery SortedBy(FigureOfMerit figure) => this with { Sort = figure, GreatestFirst = Sort == figure && !GreatestFirst };

    /// <summary>With a factor held to a level, or free where the level is empty.</summary>
    public StandingQuery With(string factor, string level)
    {
        var levels = new SortedDictionary<string, string>(Levels.ToDictionary(), StringComparer.Ordinal);
        levels.Remove(factor);
        if (level.Length > 0)
        {
            levels.Add(factor, level);
        }

        return this with { Levels = levels };
    }

    /// <summary>With a column more, or one less.</summary>
    public StandingQuery Toggled(FigureOfMerit column) => this with
    {
        Columns = [.. FiguresOfMerit.All.Where(figure => Columns.Contains(figure) != (figure == column))],
    };
}
