namespace Tarry.Reports.Figures;

/// <summary>Which part of a text stands at its place.</summary>
internal enum Anchor
{
    Start,
    Middle,
    End,
}
