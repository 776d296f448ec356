namespace Tarry.Studies.Reports;

/// <summary>Usages of one page from the first to the last; one usage has both alike.</summary>
/// <param name="Page">The usage page, such as 9 for buttons.</param>
/// <param name="First">The first usage.</param>
/// <param name="Last">The last usage, not below the first.</param>
public sealed record UsageRange(int Page, int First, int Last);
