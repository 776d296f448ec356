using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Play;

/// <summary>What is assumed of the game and the player.</summary>
/// <param name="WindowsMs">Timing windows: an input counts when it comes within so many milliseconds of the right moment, to either side. Ascending.</param>
/// <param name="PlayerSdsMs">Standard deviations of the player's own timing, in milliseconds. Ascending.</param>
/// <param name="WindowsAreDefaults">Whether the windows are those below, because nobody stated any.</param>
/// <param name="PlayerSdsAreDefaults">Whether the standard deviations are those below, because nobody stated any.</param>
public sealed record PlaySettings(
    IReadOnlyList<double> WindowsMs,
    IReadOnlyList<double> PlayerSdsMs,
    bool WindowsAreDefaults,
    bool PlayerSdsAreDefaults)
{
    private const double FrameMs = 1000.0 / 60;

    /// <summary>Windows of one, two and four frames of a game at 60 frames/s: +-8.3, +-16.7 and +-33.3 ms. Common practice, no published source.</summary>
    public static IReadOnlyList<double> DefaultWindowsMs { get; } = [FrameMs / 2, FrameMs, 2 * FrameMs];

    /// <summary>
    /// 0: a player who never errs, which shows what the device alone takes away. 10: hitting a thrown ball asks for about
    /// +-10 ms, which skilled players achieve (J. R. Tresilian, Exerc. Sport Sci. Rev. 32, 2004).
    /// </summary>
    public static IReadOnlyList<double> DefaultPlayerSdsMs { get; } = [0, 10];

    /// <summary>The study's own settings, with defaults for what it does not state.</summary>
    public static PlaySettings Of(PlayEntry? entry) => new(
        Ascending(entry?.WindowsMs ?? DefaultWindowsMs),
        Ascending(entry?.PlayerSdsMs ?? DefaultPlayerSdsMs),
        entry?.WindowsMs is null,
        entry?.PlayerSdsMs is null);

    private static double[] Ascending(IReadOnlyList<double> values) => [.. values.Distinct().Order()];
}
