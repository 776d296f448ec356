namespace Tarry.Statistics.SlotGrid;

/// <summary>What the grid of a device's report slots could be told to be: <see cref="ReportIntervalFound"/> or <see cref="ReportIntervalRefused"/>.</summary>
/// <param name="Trials">How many presses were looked at.</param>
/// <param name="FrameIntervalMs">The interval of the frames that all responses of the sittings fall on, on the data's clock; null where no stable grid of frames was seen.</param>
public abstract record ReportIntervalOutcome(int Trials, double? FrameIntervalMs);
