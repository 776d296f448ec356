namespace Tarry.Imports.Sticks;

/// <summary>A change of the level that stands for the wiper of x, in ticks of the reports' session.</summary>
/// <param name="FromTick">Until here the level before stood.</param>
/// <param name="ToTick">From here on this one stands; in between it is not known.</param>
/// <param name="Level">The level as a share of the supply.</param>
public sealed record LevelChange(long FromTick, long ToTick, double Level);
