namespace Tarry.Rig.HostEvents;

/// <summary>Told of every report, on the thread that reads.</summary>
public delegate void InputReportHandler(InputReport report);
