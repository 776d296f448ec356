using Tarry.Studies.Reports;

namespace Tarry.Imports.HidReports;

/// <summary>A collection of a report descriptor with what is in it, in order: fields and further collections.</summary>
public sealed class HidCollection
{
    private readonly List<object> content = [];

    internal HidCollection(int offset, int type, UsageRange? usage) => (Offset, Type, Usage) = (offset, type, usage);

    /// <summary>The byte of the descriptor at which it begins.</summary>
    public int Offset { get; }

    /// <summary>Its type: 0 physical, 1 application, 2 logical and on; -1 for the descriptor as a whole.</summary>
    public int Type { get; }

    /// <summary>What it is of; null where not stated.</summary>
    public UsageRange? Usage { get; }

    /// <summary>What is in it: each a <see cref="HidField"/> or a <see cref="HidCollection"/>.</summary>
    public IReadOnlyList<object> Content => content;

    internal void Add(object part) => content.Add(part);
}
