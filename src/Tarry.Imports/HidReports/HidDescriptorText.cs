using System.Globalization;
using static System.FormattableString;

namespace Tarry.Imports.HidReports;

/// <summary>A report descriptor as an indented tree in words.</summary>
public static class HidDescriptorText
{
    /// <summary>The lines of the tree, then what is wrong.</summary>
    public static IEnumerable<string> Lines(HidReportDescriptor descriptor)
    {
        ArgumentNullException.ThrowIfNull(descriptor);
        return Lines(descriptor.Root, 0).Concat(descriptor.Problems.Select(problem => $"problem: {problem}"));
    }

    private static IEnumerable<string> Lines(HidCollection collection, int depth)
    {
        var indent = new string(' ', 2 * depth);
        foreach (var part in collection.Content)
        {
            switch (part)
            {
                case HidCollection inner:
                    yield return $"{indent}{HidUsageNames.CollectionType(inner.Type)} collection{(inner.Usage is { } usage ? $": {HidUsageNames.Of(usage)}" : "")}";
                    foreach (var line in Lines(inner, depth + 1))
                    {
                        yield return line;
                    }

                    break;
                case HidField field:
                    yield return indent + Line(field);
                    break;
            }
        }
    }

    private static string Line(HidField field)
    {
        var kind = field.Kind switch { HidReportKind.Input => "input", HidReportKind.Output => "output", _ => "feature" };
        var report = field.ReportId is { } id ? Invariant($" of report {id}") : "";
        var place = Invariant($"{kind}{report}, bit {field.BitOffset}: {field.Count} x {Counted(field.BitSize)}");
        if (field.IsConstant)
        {
            return place + ", padding";
        }

        var usages = field.Usages.Count == 0 ? "no usage" : string.Join(", ", field.Usages.Take(16).Select(Name)) + (field.Usages.Count > 16 ? ", ..." : "");
        return Invariant($"{place}, {(field.IsVariable ? "" : "array of ")}{usages}, {field.LogicalMinimum} to {field.LogicalMaximum}{Further(field)}");
    }

    private static string Name(Studies.Reports.UsageRange range) =>
        range.First == range.Last ? HidUsageNames.Of(range) : $"{HidUsageNames.Of(range)} to {HidUsageNames.Of(range with { First = range.Last })}";

    private static string Counted(int bits) => bits == 1 ? "1 bit" : string.Create(CultureInfo.InvariantCulture, $"{bits} bits");

    private static string Further(HidField field) =>
        (field.IsRelative ? ", relative" : "")
        + (field.HasNullState ? ", with null state" : "")
        + ((field.PhysicalMinimum, field.PhysicalMaximum) is (0, 0) ? "" : Invariant($", stands for {field.PhysicalMinimum} to {field.PhysicalMaximum}"))
        + (field.Unit == 0 ? "" : Invariant($", unit 0x{field.Unit:x} times 10^{field.UnitExponent}"));
}
