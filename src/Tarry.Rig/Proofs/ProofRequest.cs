namespace Tarry.Rig.Proofs;

/// <summary>How the rig is wired to itself, and how thoroughly to look.</summary>
public sealed record ProofRequest
{
    /// <summary>What answers: <c>edge</c>, the press output on the response input; or <c>light</c>, a LED on it in front of the sensor.</summary>
    public string Response { get; init; } = "edge";

    /// <summary>The loop goes through the part that closes the contact.</summary>
    public bool ThroughActuator { get; init; }

    /// <summary>The loop answers with a falling edge, as an optocoupler that pulls the input low does.</summary>
    public bool FallingEdge { get; init; }

    /// <summary>Light threshold in 1/256 of the supply, as the runs will use it.</summary>
    public int LightThreshold { get; init; } = 128;

    /// <summary>Presses round the loop; 45 seconds of them; much fewer are too short for the clock fit.</summary>
    public int Trials { get; init; } = 3000;
}
