using Tarry.Imports;
using static System.FormattableString;

namespace Tarry.Output;

internal sealed class ImportProgressLine(ProgressLine line) : IProgress<ImportProgress>
{
    public void Report(ImportProgress value) =>
        line.Show(Invariant($"{value.FileName}: {value.BytesRead / 1e6:0} of {value.BytesTotal / 1e6:0} MB, {100.0 * value.BytesRead / Math.Max(1, value.BytesTotal):0} %"));
}
