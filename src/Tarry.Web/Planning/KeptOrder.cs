using Tarry.Imports.Orders;
using Tarry.Reports.Publishing;

namespace Tarry.Web.Planning;

/// <summary>The order of runs that a study keeps, in its folder: what the bench works through.</summary>
public static class KeptOrder
{
    /// <summary>The name of its file.</summary>
    public const string FileName = RunOrderFile.Name;

    /// <summary>Keeps an order.</summary>
    /// <param name="folder">The study folder.</param>
    /// <param name="sheet">The order.</param>
    /// <returns>The text of the one before it; null where there was none.</returns>
    public static string? Keep(string folder, PlanSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var before = Read(folder);
        WholeFile.Write(PathIn(folder), sheet.WriteTable);
        return before;
    }

    /// <summary>Puts the order back that was there before.</summary>
    /// <param name="folder">The study folder.</param>
    /// <param name="before">Its text; null where there was none.</param>
    public static void Restore(string folder, string? before)
    {
        if (before is null)
        {
            File.Delete(PathIn(folder));
        }
        else
        {
            WholeFile.Write(PathIn(folder), writer => writer.Write(before));
        }
    }

    /// <summary>Whether the order that is kept is this one.</summary>
    public static bool Is(string folder, PlanSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        using var text = new StringWriter();
        sheet.WriteTable(text);
        return Read(folder) == text.ToString();
    }

    /// <summary>The text of the order that is kept; null where there is none.</summary>
    public static string? Read(string folder) => File.Exists(PathIn(folder)) ? File.ReadAllText(PathIn(folder)) : null;

    private static string PathIn(string folder) => Path.Combine(folder, FileName);
}
