namespace Tarry.Studies.Sticks;

/// <summary>The procedures by their names, as the study folder and the command line have them: <c>rest</c>, <c>flick-release</c> and on.</summary>
public static class StickProcedures
{
    private static readonly string[] _names = ["rest", "flick-release", "rim-sweep", "angle-stops", "slow-ramp", "substitution"];

    /// <summary>All names, in the order of <see cref="StickProcedure"/>.</summary>
    public static IReadOnlyList<string> Names => _names;

    /// <summary>The name of a procedure.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such procedure.</exception>
    public static string Name(StickProcedure procedure) => (int)procedure is var index && index >= 0 && index < _names.Length
        ? _names[index]
        : throw new ArgumentOutOfRangeException(nameof(procedure), procedure, "There is no such procedure.");

    /// <summary>The procedure of a name; null where none has it.</summary>
    public static StickProcedure? Find(string name) =>
        Array.IndexOf(_names, name) is var index && index >= 0 ? (StickProcedure)index : null;
}
