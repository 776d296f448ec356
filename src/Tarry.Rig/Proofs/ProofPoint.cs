namespace Tarry.Rig.Proofs;

/// <summary>One thing that the rig has to prove.</summary>
/// <param name="Name">What.</param>
/// <param name="Passed">Whether it did; null where the point does not apply to this wiring.</param>
/// <param name="Found">What was found, with its unit.</param>
/// <param name="Limit">What is asked for.</param>
/// <param name="Basis">Where the limit comes from.</param>
/// <param name="Remedy">What to look at if it failed; null if it did not.</param>
public sealed record ProofPoint(string Name, bool? Passed, string Found, string Limit, string Basis, string? Remedy);
