namespace Tarry.Imports.Recordings;

/// <summary>Thrown where a recording stops making sense; whoever reads it keeps what came before.</summary>
internal sealed class DamagedRecordingException(long offset, string problem) : Exception(problem)
{
    public RecordingDamage Damage { get; } = new(offset, problem);
}
