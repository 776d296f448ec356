using System.Globalization;
using System.Text;
using Tarry.Metrology;

namespace Tarry.PageBenchmark;

/// <summary>A study of many conditions as a long-form CSV: latency = fixed + wait for a slot + wait for a frame of 4.1 ms + noise, a few of them late by a retry.</summary>
internal static class LargeStudy
{
    private const double FrameMs = 4.1;

    /// <summary>Writes it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="conditions">How many conditions; the first is the reference.</param>
    /// <param name="sittings">In how many sittings each is measured.</param>
    /// <param name="trials">How many trials a session has.</param>
    public static void Write(string path, int conditions, int sittings, int trials)
    {
        var random = new SeededGenerator(1);
        using var file = new StreamWriter(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        file.WriteLine("condition,sitting,seq,press_time_us,latency_us,outcome,device,unit,link,layer");
        for (var sitting = 1; sitting <= sittings; sitting++)
        {
            for (var condition = 0; condition < conditions; condition++)
            {
                var press = 0.0;
                var shift = 0.1 * random.NextNormal();
                for (var trial = 1; trial <= trials; trial++)
                {
                    press += 70 + (60 * random.NextDouble());
                    var latency = Latency(condition, press, random) + shift;
                    file.WriteLine(string.Create(
                        CultureInfo.InvariantCulture,
                        $"pad-{condition:00},sitting-{sitting},{trial},{press * 1000:0},{latency * 1000:0},response,Pad {condition / 4},A,{(condition % 2 == 0 ? "usb" : "dongle")},{(condition % 4 == 3 ? "overlay" : "none")}"));
                }
            }
        }
    }

    // The press waits for the next slot, and the report for the next frame.
    private static double Latency(int condition, double pressMs, SeededGenerator random)
    {
        double[] slots = [1, 2, 4, 8];
        var slot = slots[condition % slots.Length];
        var handed = Next(pressMs + 1 + (0.3 * condition), slot) + (random.NextDouble() < 0.02 ? 4 : 0);
        return Next(handed, FrameMs) + 2 + (0.12 * random.NextNormal()) - pressMs;
    }

    private static double Next(double time, double interval) => Math.Ceiling(time / interval) * interval;
}
