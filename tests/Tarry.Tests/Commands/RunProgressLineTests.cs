using Tarry.Output;
using Tarry.Rig.Runs;

namespace Tarry.Tests.Commands;

public class RunProgressLineTests
{
    [Theory]
    [InlineData(59, ", 0:00:59 to go")]
    [InlineData(3_661, ", 1:01:01 to go")]
    [InlineData(180_000, ", 50:00:00 to go")]
    public void Report_WhatRemains_IsInHoursHoweverMany(int seconds, string end)
    {
        using var shown = new StringWriter();
        using var line = new ProgressLine(new Terminal(TextWriter.Null, shown, ShowsProgress: false, OutIsTerminal: false));
        new RunProgressLine(line).Report(new RunProgress("monday.quill-usb", RunPhase.Running, 100, 98, 2, 0, 0, null, null, TimeSpan.FromSeconds(seconds), [], new RigHealth(null, null, null, 0, 0, 0, 0, 0, 0, 0, null)));
        Assert.EndsWith(end, shown.ToString().TrimEnd(), StringComparison.Ordinal);
    }
}
