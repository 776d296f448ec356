using Tarry.Findings;
using Tarry.Findings.Play;
using Tarry.Metrology;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>What latencies mean for play, in words.</summary>
public static class PlayWording
{
    private const double ToldBelow = 0.05;

    /// <summary>A window's width to either side, without its unit: <c>8.3</c>.</summary>
    public static string Window(double windowMs) => Plain(Math.Round(windowMs, 1));

    /// <summary>Who plays.</summary>
    public static string Player(double playerSdMs) => playerSdMs == 0
        ? "a player who never errs"
        : $"a player whose own timing varies by {Milliseconds(playerSdMs)} (standard deviation)";

    /// <summary>A hit probability with its interval, for a figure: <c>57.6 (57.0 to 58.2)</c>.</summary>
    internal static string Brief(PlayWindow window) => window.HitProbability is Estimate<Proportion> hits
        ? $"{EstimateWording.Value(hits, Quantity.Share)} ({EstimateWording.Bounds(hits, Quantity.Share)})"
        : EstimateWording.ClaimOrLack(window.HitProbability, Quantity.Share);

    /// <summary>What is assumed, and on what ground.</summary>
    public static string Assumptions(PlaySettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var windows = $"Timing windows of {Listing.And([.. settings.WindowsMs.Select(Window)])}{NoBreakSpace}ms to either side"
            + (settings.WindowsAreDefaults ? " are one, two and four frames at 60 frames/s: an assumption (common practice, no published source)" : " are as stated");
        var players = settings.PlayerSdsAreDefaults
            ? $"0{NoBreakSpace}ms is a player who never errs, whom nothing but the device keeps from hitting; 10{NoBreakSpace}ms is of the order that skilled players reach with a thrown ball (J. R. Tresilian, Exerc. Sport Sci. Rev. 32, 2004): an assumption too"
            : $"the player's own standard deviation of {Listing.And([.. settings.PlayerSdsMs.Select(Plain)])}{NoBreakSpace}ms is as stated";
        return $"{windows}; {players}. State your own under [play] in study.toml.";
    }

    /// <summary>For one player and window: who hits most often, who least, and what the data tell of it.</summary>
    public static string Sentence(FindingsDocument document, PlayRanking ranking)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(ranking);
        var play = document.Play ?? throw new ArgumentException("The document says nothing of play.", nameof(document));
        var (best, worst) = (ranking.Conditions[0].Id, ranking.Conditions[^1].Id);
        var setting = $"Within {Window(ranking.WindowMs)}{NoBreakSpace}ms of the right moment {Player(ranking.PlayerSdMs)}";
        if (Hits(play, best, ranking) is not { } most || Hits(play, worst, ranking) is not { } least)
        {
            return $"{setting} cannot be judged: {EstimateWording.ClaimOrLack(Find(play, best, ranking).HitProbability, Quantity.Share)}.";
        }

        if (ranking.Conditions.Count == 1)
        {
            return $"{setting} hits with {best} in {EstimateWording.Claim(most, Quantity.Share)} of presses.";
        }

        var hundred = (most.Value.Value - least.Value.Value) * 100;
        var told = Told(play, best, worst, ranking);
        return told
            ? $"{setting} hits with {best} in {EstimateWording.Value(most, Quantity.Share)}{NoBreakSpace}% of presses and with {worst} in {EstimateWording.Value(least, Quantity.Share)}{NoBreakSpace}%: {OfHundred(hundred)}."
            : $"{setting} hits equally often with all conditions, as far as these data tell: from {EstimateWording.Value(least, Quantity.Share)}{NoBreakSpace}% with {worst} to {EstimateWording.Value(most, Quantity.Share)}{NoBreakSpace}% with {best}.";
    }

    internal static PlayWindow Find(StudyPlay play, string id, PlayRanking ranking) => play.Conditions
        .Single(condition => condition.Id == id).Windows
        .Single(window => window.PlayerSdMs == ranking.PlayerSdMs && window.WindowMs == ranking.WindowMs);

    private static Estimate<Proportion>? Hits(StudyPlay play, string id, PlayRanking ranking) => Find(play, id, ranking).HitProbability as Estimate<Proportion>;

    private static bool Told(StudyPlay play, string best, string worst, PlayRanking ranking) => play.Comparisons.Any(pair =>
        pair.PlayerSdMs == ranking.PlayerSdMs && pair.WindowMs == ranking.WindowMs && pair.AdjustedP < ToldBelow
        && ((pair.A == best && pair.B == worst) || (pair.A == worst && pair.B == best)));

    private static string OfHundred(double hundred) => hundred < 0.05
        ? "less than one press in two thousand"
        : $"{Fixed(hundred, hundred < 10 ? 1 : 0)} presses in a hundred that the device decides";
}
