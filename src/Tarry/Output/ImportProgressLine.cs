using Tarry.Imports;
using static System.FormattableString;

namespace Tarry.Output;

internal sealed class ImportProgressLine(ProgressLine line) : IProgress<ImportProgress>
{
    public void Report(ImportProgress value) =>
        line.Show(Invariant($"{value.FileName}: {value.RowsRead} rows, {100.0 * value.BytesRead / Math.Max(1, value.BytesTotal):0} %"));
}
