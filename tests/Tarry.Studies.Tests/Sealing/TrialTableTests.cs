using ParquetSharp;
using Tarry.Studies.Sealing;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests.Sealing;

public sealed class TrialTableTests
{
    private static readonly Trial[] _trials =
    [
        new(1, 0, 1_600_000, 107_000, null, Outcome.Response, TrialFlags.None, 1),
        new(2, 0, null, null, null, Outcome.Missed, TrialFlags.None, 0),
        new(3, 0, long.MaxValue, 0, null, Outcome.Early, TrialFlags.LineActiveAtPress, 255),
        new(4, 1, 0, 5, 9, Outcome.Response, (TrialFlags)255, 2),
        new(long.MaxValue, 1, null, null, null, Outcome.Refused, TrialFlags.None, 0),
    ];

    [Fact]
    public void Write_EveryKindOfTrial_ReadsBackTheSame()
    {
        Assert.Equal(_trials, TrialTable.Read(TrialTable.Write(_trials)));
        Assert.Empty(TrialTable.Read(TrialTable.Write([])));
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytes() => Assert.Equal(TrialTable.Write(_trials), TrialTable.Write(_trials));

    [Fact]
    public void Write_AnyTrials_HasTheSpecifiedColumnsTypesAndEncoding()
    {
        using var stream = new MemoryStream(TrialTable.Write(_trials));
        using var file = new ParquetFileReader(stream);
        using var rows = file.RowGroup(0);
        var columns = Enumerable.Range(0, file.FileMetaData.NumColumns).Select(index =>
        {
            var column = file.FileMetaData.Schema.Column(index);
            var chunk = rows.MetaData.GetColumnChunkMetaData(index);
            Assert.Equal(Compression.Zstd, chunk.Compression);
            Assert.Contains(Encoding.DeltaBinaryPacked, chunk.Encodings);
            return $"{column.Name} {column.PhysicalType} {(column.MaxDefinitionLevel > 0 ? "null" : "")}".TrimEnd();
        });
        Assert.Equal(
            [
                "seq Int64", "segment Int32", "press_ticks Int64 null", "latency_ticks Int64 null", "latency_high_ticks Int64 null",
                "outcome Int32", "flags Int32", "edges Int32",
            ],
            columns);
        Assert.Equal(1, file.FileMetaData.NumRowGroups);
    }

    [Fact]
    public void Read_NotParquet_IsInvalidData()
    {
        Assert.Throws<InvalidDataException>(() => TrialTable.Read("PAR1 and no more"u8.ToArray()));
        Assert.Throws<InvalidDataException>(() => TrialTable.Read([]));
    }

    [Fact]
    public void Read_OtherColumns_NamesTheColumn()
    {
        using var stream = new MemoryStream();
        using (var file = new ParquetFileWriter(stream, [new Column<long>("seq"), new Column<int>("part")], leaveOpen: true))
        {
            using var rows = file.AppendRowGroup();
            using (var column = rows.NextColumn().LogicalWriter<long>())
            {
                column.WriteBatch([1]);
            }

            using (var column = rows.NextColumn().LogicalWriter<int>())
            {
                column.WriteBatch([1]);
            }
        }

        Assert.Contains("'part'", Assert.Throws<InvalidDataException>(() => TrialTable.Read(stream.ToArray())).Message, StringComparison.Ordinal);
    }
}
