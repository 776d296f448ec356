using Tarry.Imports.HidReports;
using Tarry.Imports.Tests.PacketCapture;

namespace Tarry.Imports.Tests.HidReports;

/// <summary>Layouts and values are those of HID 1.11 appendix E and of the worked examples beside them, not of this code.</summary>
public class HidReportDescriptorTests
{
    [Fact]
    public void Parse_KeyboardOfAppendixE6_HasItsSixtyFourInputAndEightOutputBits()
    {
        Assert.Equal(63, SampleDescriptors.Keyboard.Length);
        var descriptor = HidReportDescriptor.Parse(SampleDescriptors.Keyboard);

        Assert.Empty(descriptor.Problems);
        Assert.False(descriptor.UsesReportIds);
        Assert.Equal(64, descriptor.BitsOf(HidReportKind.Input, null));
        Assert.Equal(8, descriptor.BitsOf(HidReportKind.Output, null));
        var (fields, left) = HidReportFields.Of(descriptor, 0x81, idInBytes: false);
        Assert.Equal(0, left);
        Assert.Equal(
            ["left_control", "left_shift", "left_alt", "left_gui", "right_control", "right_shift", "right_alt", "right_gui", "key_slot_1", "key_slot_2", "key_slot_3", "key_slot_4", "key_slot_5", "key_slot_6"],
            fields.Select(field => field.Column));
        // Left shift and the keys 04 (a) and 65 (the last one); 66 is outside the logical range 0 to 101.
        byte[] report = [0x02, 0xFF, 0x04, 0x65, 0x66, 0, 0, 0];
        Assert.Equal([0, 1, 0, 0, 0, 0, 0, 0, 4, 0x65, null, 0, 0, 0], fields.Select(field => field.ValueIn(report)));
    }

    [Fact]
    public void Parse_MouseOfAppendixE10_ReadsSignedRelativeAxes()
    {
        Assert.Equal(50, SampleDescriptors.Mouse.Length);
        var descriptor = HidReportDescriptor.Parse(SampleDescriptors.Mouse);

        Assert.Empty(descriptor.Problems);
        Assert.Equal(24, descriptor.BitsOf(HidReportKind.Input, null));
        var fields = HidReportFields.Of(descriptor, 0x81, idInBytes: false).Fields;
        Assert.Equal(["button_1", "button_2", "button_3", "x", "y"], fields.Select(field => field.Column));
        Assert.All(fields.Skip(3), field => Assert.True(field.IsRelative && field is { LogicalMinimum: -127, LogicalMaximum: 127 }));
        Assert.Equal([1, 0, 0, -5, 7], fields.Select(field => field.ValueIn([0x01, 0xFB, 0x07])));
    }

    [Fact]
    public void Parse_Gamepad_ReadsAxesHatAndButtonsBehindTheReportId()
    {
        Assert.Equal(72, SampleDescriptors.Gamepad.Length);
        var descriptor = HidReportDescriptor.Parse(SampleDescriptors.Gamepad);

        Assert.Empty(descriptor.Problems);
        Assert.True(descriptor.UsesReportIds);
        Assert.Equal(80, descriptor.BitsOf(HidReportKind.Input, 1));
        var fields = HidReportFields.Of(descriptor, 0x81, idInBytes: true).Fields;
        Assert.Equal([8, 24, 40, 56, 72, 76], fields.Take(6).Select(field => field.BitOffset));
        Assert.Equal(["x", "y", "rx", "ry", "hat_switch", "button_1"], fields.Take(6).Select(field => field.Column));
        Assert.Equal((315L, 0x14L), (fields[4].PhysicalMaximum, fields[4].Unit));
        byte[] report = [0x01, 0xFF, 0x7F, 0x01, 0x80, 0x00, 0x00, 0x00, 0x01, 0x12, 0x80];
        Assert.Equal([32767, -32767, 0, 256, 2, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1], fields.Select(field => field.ValueIn(report)));
        report[9] = 0x18;
        Assert.Null(fields[4].ValueIn(report));
        Assert.Null(fields[4].ValueIn(report.AsSpan(0, 9)));
    }

    // HID 1.11, 6.2.2.7: minimum and maximum are signed; one byte FF is -1, and the pair 15 00 25 FF of many devices means 0 to 255.
    [Theory]
    [InlineData("1581257f", -127, 127)]
    [InlineData("150026ff00", 0, 255)]
    [InlineData("150025ff", 0, 255)]
    [InlineData("15ff2501", -1, 1)]
    [InlineData("16018026ff7f", -32767, 32767)]
    [InlineData("150027ffffffff", 0, 4294967295)]
    public void Parse_LogicalRange_IsReadBySizeAndSign(string items, long minimum, long maximum)
    {
        var field = Assert.Single(HidReportDescriptor.Parse(Convert.FromHexString(items + "7520950105010930" + "8102")).Fields);

        Assert.Equal((minimum, maximum), (field.LogicalMinimum, field.LogicalMaximum));
    }

    [Fact]
    public void Parse_PushAndPop_BringBackTheGlobals()
    {
        // Report size 8, pushed; then 1; popped: 8 again.
        var fields = HidReportDescriptor.Parse(Convert.FromHexString("050909011500250175089501a47501" + "8102b409018102")).Fields;

        Assert.Equal([1, 8], fields.Select(field => field.BitSize));
    }

    [Fact]
    public void Parse_LongItemAndDelimiters_ArePassedOverAndTheFirstAlternativeTaken()
    {
        // A long item of two bytes; then usage X or Rx between delimiters, then Y.
        var descriptor = HidReportDescriptor.Parse(Convert.FromHexString("fe02f0aabb0501a9010930" + "0933a900093115002501750195028102"));

        Assert.Empty(descriptor.Problems);
        Assert.Equal(["x", "y"], HidReportFields.Of(descriptor, 1, idInBytes: false).Fields.Select(field => field.Column));
    }

    [Fact]
    public void Parse_UsageWithItsPage_OverridesThePageInForce()
    {
        var descriptor = HidReportDescriptor.Parse(Convert.FromHexString("05010b020009001500250175019501" + "8102"));

        Assert.Equal("button_2", Assert.Single(HidReportFields.Of(descriptor, 1, idInBytes: false).Fields).Column);
    }

    [Theory]
    [InlineData("0501c0", HidProblemKind.EndWithoutCollection, 2)]
    [InlineData("a101", HidProblemKind.CollectionNotClosed, 2)]
    [InlineData("b4", HidProblemKind.PopWithoutPush, 0)]
    [InlineData("a4a4a4a4a4", HidProblemKind.PushTooDeep, 4)]
    [InlineData("8500", HidProblemKind.ReportIdOutOfRange, 0)]
    [InlineData("750195008102", HidProblemKind.FieldWithoutSize, 4)]
    [InlineData("27ffff", HidProblemKind.ItemCutOff, 0)]
    [InlineData("fe20f0", HidProblemKind.ItemCutOff, 0)]
    [InlineData("0d00", HidProblemKind.ReservedType, 0)]
    [InlineData("d000", HidProblemKind.ReservedTag, 0)]
    [InlineData("19052903", HidProblemKind.UsageRangeBroken, 2)]
    [InlineData("1905750195018102", HidProblemKind.UsageRangeBroken, 6)]
    [InlineData("a900", HidProblemKind.DelimiterBroken, 0)]
    [InlineData("15052501750195018102", HidProblemKind.LogicalRangeBroken, 8)]
    [InlineData("77ffffff7f97ffffff7f8102", HidProblemKind.ReportTooLong, 10)]
    [InlineData("750195018102850181020000", HidProblemKind.SomeReportsWithoutId, 4)]
    public void Parse_Malformed_NamesTheProblemAndItsByte(string hex, HidProblemKind kind, int offset)
    {
        var problems = HidReportDescriptor.Parse(Convert.FromHexString(hex)).Problems;

        Assert.Contains(problems, problem => problem.Kind == kind && problem.Offset == offset);
    }

    [Fact]
    public void Parse_ManyNestedCollections_AreCutAtTheLimitAndStayInStep()
    {
        byte[] nested = [.. Enumerable.Repeat<byte[]>([0xA1, 0x01], 100).SelectMany(item => item), .. Enumerable.Repeat((byte)0xC0, 100)];

        var problems = HidReportDescriptor.Parse(nested).Problems;

        Assert.All(problems, problem => Assert.Equal(HidProblemKind.CollectionsTooDeep, problem.Kind));
        Assert.NotEmpty(problems);
    }

    [Fact]
    public void Lines_OfAKeyboard_ShowTheTree()
    {
        var lines = HidDescriptorText.Lines(HidReportDescriptor.Parse(SampleDescriptors.Keyboard)).ToList();

        Assert.Equal("application collection: keyboard", lines[0]);
        Assert.Contains("  input, bit 16: 6 x 8 bits, array of key_00 to key_65, 0 to 101", lines);
    }

    [Fact]
    public void Read_HexTextAndBytes_GiveTheSameDescriptor()
    {
        var hex = string.Join(", ", SampleDescriptors.Mouse.Select(value => $"0x{value:x}"));

        Assert.Equal(SampleDescriptors.Mouse, HidDescriptorFile.Read(System.Text.Encoding.ASCII.GetBytes(hex)));
        Assert.Equal(SampleDescriptors.Mouse, HidDescriptorFile.Read(SampleDescriptors.Mouse));
        Assert.Throws<ImportException>(() => HidDescriptorFile.Read([]));
        Assert.Throws<ImportException>(() => HidDescriptorFile.Read("condition,sitting,latency_us\n"u8));
    }
}
