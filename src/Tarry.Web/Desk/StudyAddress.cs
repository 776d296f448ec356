namespace Tarry.Web.Desk;

/// <summary>Addresses of a study's pages. A study's name may hold <c>/</c>, which is written as RFC 6901 does: <c>~1</c>, and <c>~0</c> for <c>~</c>.</summary>
public static class StudyAddress
{
    /// <summary>The address of a page of a study, relative to the app.</summary>
    /// <param name="name">The study's name on the shelf.</param>
    /// <param name="page">The page, such as <c>standing</c>, with its query if it has one.</param>
    public static string Of(string name, string page) => $"study/{Segment(name)}/{page}";

    /// <summary>A name as one segment of an address.</summary>
    public static string Segment(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Uri.EscapeDataString(name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal));
    }

    /// <summary>The name in a segment that was unescaped already, as pages get it.</summary>
    public static string Name(string segment)
    {
        ArgumentNullException.ThrowIfNull(segment);
        return segment.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
    }
}
