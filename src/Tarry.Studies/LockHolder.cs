namespace Tarry.Studies;

/// <summary>Who holds the lock of a study.</summary>
/// <param name="Program">The program, as it named itself.</param>
/// <param name="ProcessId">Its process id.</param>
/// <param name="Machine">The machine that it runs on.</param>
/// <param name="Since">When it took the lock.</param>
public sealed record LockHolder(string Program, int ProcessId, string Machine, DateTimeOffset Since);
