namespace Tarry.Statistics.Shapes;

/// <summary>Fits every family by maximum likelihood and chooses by the Bayesian information criterion.</summary>
/// <remarks>
/// G. Schwarz, "Estimating the dimension of a model", Ann. Stat. 6 (1978). A margin of two or less is "not worth more than a bare
/// mention" (R. E. Kass, A. E. Raftery, "Bayes factors", J. Am. Stat. Assoc. 90, 1995, 3.2): then the data cannot tell.
/// </remarks>
public sealed class ShapeChoice
{
    /// <summary>The margin in BIC above which a family is told from the runner-up.</summary>
    public const double LeastMargin = 2;

    // So far behind on coarse bins that finer ones cannot matter.
    private const double Hopeless = 40;

    private ShapeChoice(IReadOnlyList<FittedShape> candidates, ShapeData data)
    {
        Candidates = candidates;
        Data = data;
    }

    /// <summary>All families that were fitted, best first.</summary>
    public IReadOnlyList<FittedShape> Candidates { get; }

    /// <summary>The family of the lowest BIC.</summary>
    public FittedShape Best => Candidates[0];

    /// <summary>BIC of the runner-up less that of the best; the two kinds of lumps count as one.</summary>
    public double Margin => Candidates.Skip(1).First(candidate => !AreBothLumps(candidate, Best)).Bic - Best.Bic;

    /// <summary>Whether the margin is enough to tell.</summary>
    public bool Decided => Margin > LeastMargin;

    internal ShapeData Data { get; }

    /// <summary>Fits and chooses.</summary>
    /// <param name="sessions">The sessions, at least one.</param>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static ShapeChoice Of(IReadOnlyList<SessionLatencies> sessions)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        if (sessions.Count == 0)
        {
            throw new ArgumentException("There is no session; give at least one.", nameof(sessions));
        }

        var data = new ShapeData(sessions);
        var rough = ShapeTemplates.All.Select(data.Rough).OrderBy(fit => fit.Bic).ToList();
        var near = rough.TakeWhile(fit => fit.Bic - rough[0].Bic < Hopeless).ToList();
        data.BinFor(near.Min(fit => fit.Shape.NoiseSd));
        var refined = near.Select(data.Refined).OrderBy(fit => fit.Bic).ToList();

        // The coarse bins of the rough fits shift all BIC alike.
        var shift = refined[0].Bic - rough.First(fit => fit.Shape.Family == refined[0].Shape.Family).Bic;
        return new ShapeChoice([.. refined, .. rough.Skip(near.Count).Select(fit => fit.WithBicShifted(shift))], data);
    }

    /// <summary>The fit of one family.</summary>
    public FittedShape Of(ShapeFamily family) => Candidates.First(candidate => candidate.Shape.Family == family);

    private static bool AreBothLumps(FittedShape a, FittedShape b) => a.Shape is TwoLumpShape && b.Shape is TwoLumpShape;
}
