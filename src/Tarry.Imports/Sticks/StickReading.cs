using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>How the positions of a stick are read from a file.</summary>
/// <param name="Procedure">What was done with it.</param>
/// <param name="Table">How a table is read; null where the file is none, or its range is not known.</param>
/// <param name="Reports">How reports are read.</param>
public sealed record StickReading(StickProcedure Procedure, StickTableOptions? Table, StickReportOptions Reports);
