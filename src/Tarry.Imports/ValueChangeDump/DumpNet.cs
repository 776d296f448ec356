namespace Tarry.Imports.ValueChangeDump;

/// <summary>A variable that a dump declares.</summary>
/// <param name="Identifier">Its code in the changes.</param>
/// <param name="Path">Its name with the scopes that it is in, between dots.</param>
/// <param name="Name">Its name, with the index where it is one bit of a vector.</param>
/// <param name="IsReal">Whether its values are real numbers.</param>
/// <param name="Width">Its bits.</param>
/// <param name="Left">The index of its leftmost bit.</param>
/// <param name="Right">The index of its rightmost bit.</param>
internal sealed record DumpNet(string Identifier, string Path, string Name, bool IsReal, int Width, int Left, int Right)
{
    /// <summary>Where from the right a bit is, from 0; null where the vector has none of that index.</summary>
    public int? PlaceOf(int index)
    {
        var place = Left >= Right ? index - Right : Right - index;
        return place >= 0 && place < Width ? place : null;
    }
}
