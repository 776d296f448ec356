using Tarry.Studies.Calibrations;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.Calibrations;

public sealed class CalibrationTests : IDisposable
{
    private static readonly RigCalibration Calibration = new(
        new DateTimeOffset(2026, 3, 1, 9, 30, 0, TimeSpan.Zero), "328p-16", "0.1.0", 16_000_000, "light", false, 128, new ThresholdRange(41, 209),
        1000, 20.25, 0.04, 40, 0.6, new ClockFitRecord(12.5, 0.8, 12, 28));

    private readonly ScratchStudy scratch = new("quill-usb");

    [Fact]
    public void Add_ThenOpenAgain_ReadsTheSameInOrder()
    {
        using (var held = scratch.Study.AcquireLock("test"))
        {
            Assert.Equal("0001", scratch.Study.AddCalibration(held, Calibration));
            Assert.Equal("0002", scratch.Study.AddCalibration(held, Calibration with { OwnDelayUs = 21 }));
        }

        Assert.Equal([("0001", Calibration), ("0002", Calibration with { OwnDelayUs = 21 })], Study.Open(scratch.Folder).Calibrations);
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
    }

    [Fact]
    public void Calibrations_WithAChangedByte_AreDamagedAndTheCheckNamesTheFile()
    {
        using (var held = scratch.Study.AcquireLock("test"))
        {
            scratch.Study.AddCalibration(held, Calibration);
        }

        var path = scratch.PathOf("calibrations/0001.json");
        File.WriteAllText(path, File.ReadAllText(path).Replace("20.25", "10.25", StringComparison.Ordinal));
        Assert.Equal("calibrations/0001.json", Assert.Throws<StudyDamagedException>(() => scratch.Study.Calibrations).Place);
        Assert.Equal("calibrations/0001.json", Assert.Single(StudyCheck.Run(scratch.Study).Problems).Place);
    }

    [Fact]
    public void Calibrations_NotListed_DoNotCountAndAreTold()
    {
        Directory.CreateDirectory(scratch.PathOf("calibrations"));
        File.WriteAllText(scratch.PathOf("calibrations/0001.json"), "half a");
        Assert.Empty(scratch.Study.Calibrations);
        Assert.Equal(StudyProblemKind.FileNotListed, Assert.Single(StudyCheck.Run(scratch.Study).Problems).Kind);
        using var held = scratch.Study.AcquireLock("test");
        Assert.Equal("0001", scratch.Study.AddCalibration(held, Calibration));
        Assert.Single(scratch.Study.Calibrations);
    }

    [Theory]
    [InlineData("328p-16", "light", 128, true)]
    [InlineData("328p-16", "light", 100, false)]
    [InlineData("328p-16", "edge", 128, false)]
    [InlineData("32u4-16", "light", 128, false)]
    public void HoldsFor_AnotherRigOrThreshold_DoesNot(string board, string response, int threshold, bool expected) =>
        Assert.Equal(expected, Calibration.HoldsFor(board, "0.1.0", 16_000_000, response, threshold));

    public void Dispose() => scratch.Dispose();
}
