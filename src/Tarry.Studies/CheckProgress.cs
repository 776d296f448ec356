namespace Tarry.Studies;

/// <summary>How far a check of a study is.</summary>
/// <param name="Sessions">How many sessions are checked.</param>
/// <param name="Of">How many there are.</param>
public readonly record struct CheckProgress(int Sessions, int Of);
