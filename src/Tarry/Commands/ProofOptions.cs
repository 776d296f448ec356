using System.CommandLine;
using Tarry.Rig.Proofs;

namespace Tarry.Commands;

/// <summary>The options that say where the rig is and how it is wired to itself.</summary>
internal sealed class ProofOptions
{
    private static readonly ProofRequest Defaults = new();

    private readonly Option<string> port = new("--port") { Description = "Serial port of the rig, or 'simulated'.", Required = true };
    private readonly Option<string> response = new("--response") { Description = "What answers: logic edge, or light.", DefaultValueFactory = _ => Defaults.Response };
    private readonly Option<bool> throughActuator = new("--through-actuator") { Description = "The loop goes through the optocoupler that closes the contact." };
    private readonly Option<bool> falling = new("--falling") { Description = "The loop answers with a falling edge, as an optocoupler that pulls the input low does." };
    private readonly Option<int> threshold = new("--light-threshold") { Description = "Light threshold in 1/256 of the supply, as the runs will have it.", DefaultValueFactory = _ => Defaults.LightThreshold };
    private readonly Option<int> trials = new("--trials") { Description = "Presses round the loop.", DefaultValueFactory = _ => Defaults.Trials };
    private readonly Option<bool> json = new("--json") { Description = "Answer as JSON." };

    public ProofOptions() => response.AcceptOnlyFromAmong("light", "edge");

    public void AddTo(Command command)
    {
        Option[] all = [port, response, throughActuator, falling, threshold, trials, json];
        foreach (var option in all)
        {
            command.Add(option);
        }
    }

    public string Port(ParseResult parsed) => parsed.GetRequiredValue(port);

    public bool AsJson(ParseResult parsed) => parsed.GetValue(json);

    public ProofRequest Request(ParseResult parsed) => new()
    {
        Response = parsed.GetValue(response)!,
        ThroughActuator = parsed.GetValue(throughActuator),
        FallingEdge = parsed.GetValue(falling),
        LightThreshold = parsed.GetValue(threshold),
        Trials = parsed.GetValue(trials),
    };
}
