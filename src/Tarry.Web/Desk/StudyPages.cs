namespace Tarry.Web.Desk;

/// <summary>The pages of a study, in the order in which they are offered.</summary>
public static class StudyPages
{
    /// <summary>The last part of each page's address, and its title.</summary>
    public static IReadOnlyList<(string Page, string Title)> All { get; } =
    [
        ("standing", "Standing"),
        ("condition", "Condition"),
        ("compare", "Compare"),
        ("play", "In play"),
        ("sticks", "Sticks"),
        ("quality", "Quality"),
        ("setup", "Set-up"),
        ("plan", "Plan"),
        ("import", "Import"),
        ("publish", "Publish"),
    ];
}
