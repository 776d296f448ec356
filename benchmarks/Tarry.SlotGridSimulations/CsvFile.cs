using System.Globalization;
using Tarry.Statistics.SlotGrid;

namespace Tarry.SlotGridSimulations;

/// <summary>Writes a simulated study in long form.</summary>
internal static class CsvFile
{
    public static void Write(string path, IReadOnlyList<PressSeries> reference, IReadOnlyList<PressSeries> device)
    {
        using var file = new StreamWriter(path);
        file.WriteLine("condition,sitting,seq,press_time_us,latency_us,outcome");
        foreach (var (condition, all) in new[] { ("bench-board", reference), ("device", device) })
        {
            foreach (var series in all)
            {
                for (var i = 0; i < series.Count; i++)
                {
                    file.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{condition},{series.Sitting},{i + 1},{Math.Round(series.PressMs(i) * 1000)},{Math.Round(series.LatencyMs(i) * 1000)},response"));
                }
            }
        }
    }
}
