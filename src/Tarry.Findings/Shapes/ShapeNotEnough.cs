namespace Tarry.Findings.Shapes;

/// <summary>Too few responses in sessions without drift, change or dependence to fit a shape.</summary>
/// <param name="Have">How many there are.</param>
/// <param name="Need">How many it takes.</param>
/// <param name="Of">Of what.</param>
public sealed record ShapeNotEnough(int Have, int Need, string Of) : ShapeOutcome;
