namespace Tarry.Statistics.Intervals;

internal static class ShareArgument
{
    public static void Require(int count, int trials)
    {
        Argument.RequireAtLeast(trials, 1, nameof(trials), "A share needs trials.");
        if (count < 0 || count > trials)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, $"count is {count}; it lies between 0 and the {trials} trials.");
        }
    }
}
