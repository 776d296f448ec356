using static System.FormattableString;

namespace Tarry.Imports.HidReports;

/// <summary>Something that is wrong with a HID report descriptor; the rest of it is read all the same.</summary>
/// <param name="Kind">What.</param>
/// <param name="Offset">At which byte of the descriptor, from 0.</param>
/// <param name="Message">What, in words.</param>
public sealed record HidProblem(HidProblemKind Kind, int Offset, string Message)
{
    /// <summary>The message with its place.</summary>
    public override string ToString() => Invariant($"descriptor byte {Offset}: {Message}");
}
