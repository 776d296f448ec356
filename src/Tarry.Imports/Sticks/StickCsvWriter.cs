using System.Globalization;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>Writes the positions of a stick as CSV, one row a position, as <see cref="StickTableImport"/> reads it: time, x and y in counts, and the stimulus where there is one.</summary>
/// <remarks>
/// UTF-8 without a byte order mark, lines end with LF, numbers with a decimal point and as many digits as it takes to read the same number
/// back; up is greater. A stimulus that is not known at that moment is empty. The same session gives the same bytes.
/// </remarks>
public static class StickCsvWriter
{
    private const int RowsBetweenChecks = 65_536;

    /// <summary>Writes all positions.</summary>
    /// <param name="output">Where to; it is flushed and left open.</param>
    /// <param name="session">The session.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">The output cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static void Write(TextWriter output, StickSession session, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(session);
        var samples = session.Samples;
        output.Write(string.Join(',', StickRows.Columns(session.Setup.Stimulus)) + "\n");
        for (var index = 0; index < samples.Count; index++)
        {
            if (index % RowsBetweenChecks == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            output.Write(string.Create(CultureInfo.InvariantCulture, $"{StickRows.TimeUs(session, index):0.###},{samples.X[index]:R},{samples.Y[index]:R}"));
            WriteStimulus(output, samples.Stimulus, index);
            WriteStimulus(output, samples.StimulusY, index);
            output.Write('\n');
        }

        output.Flush();
    }

    private static void WriteStimulus(TextWriter output, ReadOnlySpan<double> column, int index)
    {
        if (!column.IsEmpty)
        {
            output.Write(double.IsNaN(column[index]) ? "," : string.Create(CultureInfo.InvariantCulture, $",{column[index]:R}"));
        }
    }
}
