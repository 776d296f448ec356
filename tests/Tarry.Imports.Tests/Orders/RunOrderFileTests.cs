using Tarry.Imports.Orders;

namespace Tarry.Imports.Tests.Orders;

public sealed class RunOrderFileTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("tarry-order-tests-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Read_NoFile_IsNoOrder() => Assert.Empty(RunOrderFile.Read(folder.FullName));

    [Fact]
    public void Read_AsThePlanWritesIt_HasEveryStepOfEverySitting()
    {
        Write(
            "sitting,step,condition,is_reference,trials,seed,command\r\n"
            + "sitting-2,2,quill-usb,false,400,932772701,\"tarry run \"\"my study\"\" --port PORT\"\r\n"
            + "sitting-2,1,bench-board,true,400,932572442,\"tarry run a, b\"\r\n"
            + "sitting-1,1,quill-usb,false,400,381184447,tarry run pads\r\n");
        Assert.Equal(
            [
                new OrderedStep("sitting-2", 1, "bench-board", 400, 932572442),
                new OrderedStep("sitting-2", 2, "quill-usb", 400, 932772701),
                new OrderedStep("sitting-1", 1, "quill-usb", 400, 381184447),
            ],
            RunOrderFile.Read(folder.FullName));
    }

    [Fact]
    public void Read_ByHandWithOtherColumns_NeedsThreeOnly()
    {
        Write("condition,note,step,sitting\n# drawn from a hat\na,\"x, y\",1,monday\n");
        Assert.Equal([new OrderedStep("monday", 1, "a", null, null)], RunOrderFile.Read(folder.FullName));
    }

    [Theory]
    [InlineData("sitting,condition\nmonday,a\n", "order.csv, line 1", "step")]
    [InlineData("sitting,step,condition\nmonday,1,a\nmonday,two,b\n", "order.csv, line 3", "two")]
    [InlineData("sitting,step,condition\nmonday,1,../../a\n", "order.csv, line 2", "../../a")]
    [InlineData("sitting,step,condition\nmonday,1\n", "order.csv, line 2", "condition")]
    [InlineData("sitting,step,condition\nmonday,0,a\n", "order.csv, line 2", "0")]
    [InlineData("sitting,step,condition\nmonday,1,a\nmonday,2,a\n", "order.csv", "twice")]
    [InlineData("sitting,step,condition\nmonday,1,\"a\n", "order.csv, line 2", "quotation")]
    public void Read_RowThatIsWrong_SaysWhereAndWhat(string text, string place, string problem)
    {
        Write(text);
        var error = Assert.Throws<ImportException>(() => RunOrderFile.Read(folder.FullName));
        Assert.Equal(place, error.Place);
        Assert.Contains(problem, error.Problem, StringComparison.Ordinal);
    }

    private void Write(string text) => File.WriteAllText(Path.Combine(folder.FullName, RunOrderFile.Name), text);
}
