namespace Tarry.Web.Sticks;

/// <summary>The positions of the last seconds, from -1 to 1 over the range, oldest first, at least one.</summary>
/// <param name="Seconds">How long they took.</param>
/// <param name="Positions">The positions.</param>
public sealed record StickTrail(double Seconds, IReadOnlyList<(double X, double Y)> Positions)
{
    private const double Percent = 100;

    /// <summary>The newest.</summary>
    public (double X, double Y) Newest => Positions[^1];

    /// <summary>The least and the greatest x in per cent of half the range.</summary>
    public (double Least, double Greatest) SpanX => (Percent * Positions.Min(position => position.X), Percent * Positions.Max(position => position.X));

    /// <summary>The least and the greatest y likewise.</summary>
    public (double Least, double Greatest) SpanY => (Percent * Positions.Min(position => position.Y), Percent * Positions.Max(position => position.Y));
}
