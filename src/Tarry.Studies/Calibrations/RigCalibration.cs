using Tarry.Studies.Sessions;

namespace Tarry.Studies.Calibrations;

/// <summary>What a loop-back said of a rig: the delay that is its own, and how well that is known.</summary>
/// <param name="CalibratedAt">When.</param>
/// <param name="Board">The board.</param>
/// <param name="Firmware">Its firmware.</param>
/// <param name="TickHz">Ticks a second as stated.</param>
/// <param name="Response">What answered: <c>edge</c> or <c>light</c>.</param>
/// <param name="ThroughActuator">Whether the loop went through the part that closes the contact, so that its delay is in.</param>
/// <param name="LightThreshold">The light threshold in 1/256 of the supply; null for an edge.</param>
/// <param name="ThresholdsThatAnswer">The least and the greatest light threshold that answered; null for an edge.</param>
/// <param name="Trials">Responses behind the delay.</param>
/// <param name="OwnDelayUs">The mean from press to response around the loop, in microseconds.</param>
/// <param name="OwnDelayStandardUncertaintyUs">Its standard uncertainty, the tick in it.</param>
/// <param name="DegreesOfFreedom">Of that uncertainty.</param>
/// <param name="JitterUs">The standard deviation of one response.</param>
/// <param name="Clock">The fit of its clock against the host's; null where none was possible.</param>
public sealed record RigCalibration(
    DateTimeOffset CalibratedAt,
    string Board,
    string Firmware,
    long TickHz,
    string Response,
    bool ThroughActuator,
    int? LightThreshold,
    ThresholdRange? ThresholdsThatAnswer,
    int Trials,
    double OwnDelayUs,
    double OwnDelayStandardUncertaintyUs,
    double DegreesOfFreedom,
    double JitterUs,
    ClockFitRecord? Clock)
{
    /// <summary>Whether it holds for a run of this rig: same board, firmware and tick, same response, same threshold.</summary>
    public bool HoldsFor(string board, string firmware, long tickHz, string response, int lightThreshold) =>
        Board == board && Firmware == firmware && TickHz == tickHz && Response == response
        && (LightThreshold is null || LightThreshold == lightThreshold);
}
