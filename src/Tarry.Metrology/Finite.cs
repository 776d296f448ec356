namespace Tarry.Metrology;

internal static class Finite
{
    public static double Require(double value, string name) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "A time must be a finite number; use a typed result for what is not known.");
}
