using Microsoft.AspNetCore.Components;
using Tarry.Rig.Proofs;
using Tarry.Rig.Runs;
using Tarry.Web.Bench;
using Tarry.Web.Desk;
using Tarry.Web.Shelf;

namespace Tarry.Web.Pages;

/// <summary>The rig, wired to itself, proves itself point by point.</summary>
public sealed partial class ProofPage : IDisposable
{
    private static readonly ProofRequest Defaults = new();
    private IReadOnlyList<string> ports = [];
    private IReadOnlyList<StudySummary> studies = [];
    private string port = "";
    private string response = Defaults.Response;
    private int? threshold = Defaults.LightThreshold;
    private int? trials = Defaults.Trials;
    private bool throughActuator;
    private bool falling;
    private string study = "";
    private string storedIn = "";
    private BenchProof? proof;
    private Exception? refusal;

    /// <summary>The bench.</summary>
    [Inject]
    public required LiveBench Bench { get; set; }

    /// <summary>The ports of this machine.</summary>
    [Inject]
    public required IBenchPorts Ports { get; set; }

    /// <summary>The shelf.</summary>
    [Inject]
    public required StudySummaries Summaries { get; set; }

    /// <summary>The desks.</summary>
    [Inject]
    public required StudyDesks Desks { get; set; }

    /// <inheritdoc/>
    public void Dispose() => Bench.Changed -= OnChanged;

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        Bench.Changed += OnChanged;
        (ports, studies) = (await Task.Run(Ports.Names), await Summaries.Read());
        port = ports[0];
        proof = Bench.ProofAt(port);
    }

    private async Task Begin()
    {
        refusal = null;
        try
        {
            if (port.Length == 0 || trials is null || threshold is null)
            {
                throw new RunSettingsException("The port, the threshold or the number of presses is missing.", "Fill it in.");
            }

            var request = new ProofRequest
            {
                Response = response,
                ThroughActuator = throughActuator,
                FallingEdge = falling,
                LightThreshold = threshold.Value,
                Trials = trials.Value,
            };
            proof = await Task.Run(() => Bench.Prove(port, request));
        }
        catch (Exception exception) when (Obstacle.Is(exception))
        {
            refusal = exception;
        }
    }

    private async Task Keep()
    {
        refusal = null;
        try
        {
            var kept = proof!;
            await Task.Run(() => Desks.Of(study)?.Edit((opened, held) => kept.Stored = opened.AddCalibration(held, kept.Result!.Calibration!)));
            storedIn = study;
        }
        catch (Exception exception) when (Obstacle.Is(exception))
        {
            refusal = exception;
        }
    }

    private void OnChanged() => _ = InvokeAsync(() =>
    {
        proof = Bench.ProofAt(port) ?? proof;
        StateHasChanged();
    });
}
