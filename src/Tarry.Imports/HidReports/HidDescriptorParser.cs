using Tarry.Studies.Reports;
using static System.FormattableString;

namespace Tarry.Imports.HidReports;

/// <summary>Reads the items of one descriptor in order.</summary>
internal sealed class HidDescriptorParser
{
    // The limits of the Linux HID core (include/linux/hid.h: HID_GLOBAL_STACK_SIZE, HID_COLLECTION_STACK_SIZE, HID_MAX_BUFFER_SIZE), fields more freely.
    private const int DeepestPush = 4;
    private const int DeepestCollection = 64;
    private const int MostFields = 4_096;
    private readonly List<HidProblem> problems = [];
    private readonly List<HidField> fields = [];
    private readonly Stack<HidGlobals> pushed = new();
    private readonly Stack<HidCollection> open = new();
    private readonly Dictionary<(HidReportKind Kind, int? Id), int> lengths = [];
    private HidGlobals globals;
    private HidLocals locals = new();
    private int tooDeep;

    public HidReportDescriptor Parse(ReadOnlySpan<byte> descriptor)
    {
        var root = new HidCollection(0, -1, null);
        open.Push(root);
        foreach (var item in HidItems.Split(descriptor, problems))
        {
            Take(item);
        }

        if (open.Count > 1)
        {
            Note(HidProblemKind.CollectionNotClosed, descriptor.Length, $"{open.Count - 1} collections are not closed; the first begins at byte {open.ElementAt(open.Count - 2).Offset}");
        }

        var usesIds = fields.Any(field => field.ReportId is not null);
        if (usesIds && fields.FirstOrDefault(field => field.ReportId is null) is { } without)
        {
            Note(HidProblemKind.SomeReportsWithoutId, without.Offset, "a field belongs to no report id, though others do");
        }

        return new HidReportDescriptor
        {
            Root = root,
            Fields = fields,
            UsesReportIds = usesIds,
            Problems = [.. problems.OrderBy(problem => problem.Offset)],
        };
    }

    private void Take(HidItem item)
    {
        switch (item.Type)
        {
            case HidItemType.Main:
                TakeMain(item);
                locals = new HidLocals();
                break;
            case HidItemType.Global:
                TakeGlobal(item);
                break;
            case HidItemType.Local:
                Note(locals.Take(item));
                break;
            case HidItemType.LongItem:
                break;
            default:
                Note(HidProblemKind.ReservedType, item.Offset, "an item has the reserved type 3");
                break;
        }
    }

    private void TakeMain(HidItem item)
    {
        Note(locals.Open(item.Offset));
        switch (item.Tag)
        {
            case (int)HidReportKind.Input or (int)HidReportKind.Output or (int)HidReportKind.Feature:
                TakeField(item);
                break;
            case 10 when open.Count > DeepestCollection:
                tooDeep++;
                Note(HidProblemKind.CollectionsTooDeep, item.Offset, $"collections are nested more than {DeepestCollection} deep");
                break;
            case 10:
                var collection = new HidCollection(item.Offset, (int)(item.Data & 0xFF), locals.Usages(globals.UsagePage) is [var usage, ..] ? usage : null);
                open.Peek().Add(collection);
                open.Push(collection);
                break;
            case 12 when tooDeep > 0:
                tooDeep--;
                break;
            case 12 when open.Count > 1:
                open.Pop();
                break;
            case 12:
                Note(HidProblemKind.EndWithoutCollection, item.Offset, "a collection is ended where none is open");
                break;
            default:
                Note(HidProblemKind.ReservedTag, item.Offset, $"the main tag {item.Tag} is not defined");
                break;
        }
    }

    private void TakeGlobal(HidItem item)
    {
        switch (item.Tag)
        {
            case 0: globals.UsagePage = (int)(item.Data & 0xFFFF); break;
            case 1: globals.LogicalMinimum = item.SignedData; break;
            case 2: (globals.LogicalMaximumBits, globals.LogicalMaximumSigned) = (item.Data, item.SignedData); break;
            case 3: globals.PhysicalMinimum = item.SignedData; break;
            case 4: globals.PhysicalMaximum = item.SignedData; break;
            // A nibble in two's complement (6.2.2.7); some devices write a whole signed byte.
            case 5: globals.UnitExponent = item.Data <= 15 ? (int)(item.Data ^ 8) - 8 : item.SignedData; break;
            case 6: globals.Unit = item.Data; break;
            case 7: globals.ReportSize = Bounded(item.Data); break;
            case 8 when item.Data is >= 1 and <= 255: globals.ReportId = (int)item.Data; break;
            case 8: Note(HidProblemKind.ReportIdOutOfRange, item.Offset, $"the report id {item.Data} is not 1 to 255"); break;
            case 9: globals.ReportCount = Bounded(item.Data); break;
            case 10 when pushed.Count < DeepestPush: pushed.Push(globals); break;
            case 10: Note(HidProblemKind.PushTooDeep, item.Offset, $"more than {DeepestPush} pushes without a pop"); break;
            case 11 when pushed.Count > 0: globals = pushed.Pop(); break;
            case 11: Note(HidProblemKind.PopWithoutPush, item.Offset, "a pop where nothing was pushed"); break;
            default: Note(HidProblemKind.ReservedTag, item.Offset, $"the global tag {item.Tag} is not defined"); break;
        }
    }

    private void TakeField(HidItem item)
    {
        var kind = (HidReportKind)item.Tag;
        var (size, count) = (globals.ReportSize, globals.ReportCount);
        // A byte array may be written as one value of many bits: the bits pass, and no value is read from them.
        var bits = (long)size * count;
        if (bits == 0)
        {
            Note(HidProblemKind.FieldWithoutSize, item.Offset, Invariant($"a field has {count} values of {size} bits"));
            return;
        }

        var start = lengths.GetValueOrDefault((kind, globals.ReportId));
        if (start + bits > (ReportLog.LongestReport - 1) * 8L)
        {
            Note(HidProblemKind.ReportTooLong, item.Offset, Invariant($"a report has more than {ReportLog.LongestReport - 1} bytes"));
            return;
        }

        lengths[(kind, globals.ReportId)] = start + (int)bits;
        if (fields.Count >= MostFields)
        {
            Note(HidProblemKind.TooManyFields, item.Offset, Invariant($"there are more than {MostFields} fields"));
            return;
        }

        if (globals.LogicalMaximum < globals.LogicalMinimum)
        {
            Note(HidProblemKind.LogicalRangeBroken, item.Offset, Invariant($"the logical maximum {globals.LogicalMaximum} is below the minimum {globals.LogicalMinimum}"));
        }

        var field = new HidField
        {
            Offset = item.Offset,
            Kind = kind,
            ReportId = globals.ReportId,
            BitOffset = start,
            BitSize = size,
            Count = count,
            Flags = item.Data,
            LogicalMinimum = globals.LogicalMinimum,
            LogicalMaximum = globals.LogicalMaximum,
            PhysicalMinimum = globals.PhysicalMinimum,
            PhysicalMaximum = globals.PhysicalMaximum,
            Unit = globals.Unit,
            UnitExponent = globals.UnitExponent,
            Usages = locals.Usages(globals.UsagePage),
        };
        fields.Add(field);
        open.Peek().Add(field);
    }

    // Beyond any report, and small enough to multiply.
    private static int Bounded(uint value) => (int)Math.Min(value, 1_000_000);

    private void Note(HidProblemKind kind, int offset, FormattableString message) => Note(new HidProblem(kind, offset, Invariant(message)));

    private void Note(HidProblemKind kind, int offset, string message) => Note(new HidProblem(kind, offset, message));

    private void Note(HidProblem? problem)
    {
        // A descriptor of random bytes has one in every item; the first hundred tell enough.
        if (problem is not null && problems.Count < 100)
        {
            problems.Add(problem);
        }
    }
}
