namespace Tarry.Imports.Tests;

public sealed class ImportChoicesTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Of_ATable_NamesItsColumns()
    {
        var path = folder.Write("a.csv", "# by the rig\n\"pad, left\";delay ; \n1;2;3\n");
        Assert.Equal(["pad, left", "delay", ""], Look(path, ImportFormat.LongForm).Columns);
        Assert.Equal(["pts_time", "a,b"], Look(folder.Write("b.csv", "pts_time;a,b\n"), ImportFormat.Video, ';').Columns);
    }

    // IEEE 1364-2005, 18.2: scopes nest, and a vector has the bits of its range.
    [Fact]
    public void Of_ADump_NamesItsNetsAndEachBitOfAVector()
    {
        var path = folder.Write("a.vcd", "$timescale 1 ns $end $scope module rig $end $var wire 1 ! contact $end $var wire 2 # pads [3:2] $end $var real 64 % level $end $upscope $end $enddefinitions $end\n#0\n");
        Assert.Equal(["rig.contact", "rig.pads[2]", "rig.pads[3]", "rig.level"], Look(path, ImportFormat.Logic).Channels);
    }

    [Fact]
    public void Of_SomethingElse_SaysWhatIsWrongWithIt()
    {
        Assert.Contains("zip", Assert.Throws<ImportException>(() => Look(folder.Write("a.vcd", "PK\u0003\u0004"), ImportFormat.Logic)).Problem, StringComparison.Ordinal);
        Assert.Throws<ImportException>(() => Look(folder.Write("b.vcd", "hello"), ImportFormat.Logic));
        Assert.Throws<ImportException>(() => Look(folder.Write("c.wav", "hello"), ImportFormat.Sound));
        Assert.Throws<ImportException>(() => Look(folder["none.csv"], ImportFormat.LongForm));
    }

    public void Dispose() => folder.Dispose();

    private static ImportChoices Look(string path, string format, char? delimiter = null) => ImportChoices.Of(path, format, delimiter, TestContext.Current.CancellationToken);
}
