namespace Tarry.Imports.PacketCapture.Files;

/// <summary>What was found wrong, counted; the first thousand are kept.</summary>
public sealed class CaptureDefects
{
    private const int LongestList = 1_000;
    private readonly List<CaptureDefect> first = [];
    private readonly Dictionary<CaptureDefectKind, long> byKind = [];

    /// <summary>The first thousand.</summary>
    public IReadOnlyList<CaptureDefect> First => first;

    /// <summary>How many of which kind.</summary>
    public IReadOnlyDictionary<CaptureDefectKind, long> ByKind => byKind;

    /// <summary>How many.</summary>
    public long Total { get; private set; }

    internal void Add(CaptureDefectKind kind, long offset, string message)
    {
        Total++;
        byKind[kind] = byKind.GetValueOrDefault(kind) + 1;
        if (first.Count < LongestList)
        {
            first.Add(new CaptureDefect(kind, offset, message));
        }
    }
}
