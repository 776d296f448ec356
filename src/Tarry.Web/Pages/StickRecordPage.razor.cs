using Microsoft.AspNetCore.Components;
using Tarry.Rig.HostEvents;
using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Web.Bench;
using Tarry.Web.Desk;
using Tarry.Web.Sticks;

namespace Tarry.Web.Pages;

/// <summary>Records a stick: what is recorded now, what broke off, and what comes next.</summary>
public sealed partial class StickRecordPage
{
    private readonly StickForm form = new();
    private StickSight? sight;
    private int looks;
    private IReadOnlyList<string> ports = [];
    private IReadOnlyList<HostInputDescription> devices = [];
    private (SessionKey Key, StickSaid Said)? recovered;
    private SessionKey? asksToRemove;
    private Exception? refusal;
    private bool isBeginning;
    private bool isBegunHere;

    /// <summary>The condition.</summary>
    [SupplyParameterFromQuery]
    public string? Condition { get; set; }

    /// <summary>The sitting.</summary>
    [SupplyParameterFromQuery]
    public string? Sitting { get; set; }

    /// <summary>The procedure's name.</summary>
    [SupplyParameterFromQuery]
    public string? Procedure { get; set; }

    /// <summary>The bench.</summary>
    [Inject]
    public required LiveBench Bench { get; set; }

    /// <summary>The ports of this machine.</summary>
    [Inject]
    public required IBenchPorts Ports { get; set; }

    /// <summary>The address bar.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <inheritdoc/>
    protected override bool NeedsFindings => false;

    private bool IsBusy => isBeginning || sight?.Run is { IsOn: true };

    /// <inheritdoc/>
    protected override void OnInitialized() => Bench.Changed += OnBenchChanged;

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        await Look();
        Prefill();
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        Bench.Changed -= OnBenchChanged;
        base.Dispose(disposing);
    }

    // A look takes its time, and what has changed meanwhile is seen by the next: only the newest is shown, and never before the form is filled in.
    private async Task Look()
    {
        if (Desk is not { } desk)
        {
            return;
        }

        var look = ++looks;
        if (ports.Count == 0)
        {
            await LookForPorts();
        }

        var seen = await Task.Run(() => StickSight.Of(desk, Bench));
        if (look != looks)
        {
            return;
        }

        var isFirst = sight is null;
        sight = seen;
        if (isFirst)
        {
            form.Source = ports[0];
            Prefill();
        }
    }

    // The address first, then what was recorded last: its next procedure is what is wanted most often.
    private void Prefill()
    {
        var last = sight?.Run?.Card.Key;
        form.Condition = Condition ?? (form.Condition.Length > 0 ? form.Condition : last?.Condition ?? "");
        form.Sitting = Sitting ?? (form.Sitting.Length > 0 ? form.Sitting : last?.Sitting ?? "");
        form.Procedure = Procedure is { } name && StickProcedures.Find(name) is { } chosen ? chosen : NextProcedure;
    }

    private StickProcedure NextProcedure => StickGuide.All.FirstOrDefault(guide => !IsSealed(guide.Procedure))?.Procedure ?? form.Procedure;

    private async Task LookForPorts() => (ports, devices) = await Task.Run(() => (Ports.Names(), StickDevices.Of(Ports.InputDevices())));

    private bool IsSealed(StickProcedure procedure) =>
        Names.IsName(form.Sitting) && Names.IsName(form.Condition) && sight is not null && sight.Sealed.Contains(new SessionKey(form.Sitting, form.Condition, procedure));

    private void ChooseCondition(ChangeEventArgs change)
    {
        form.Condition = (string?)change.Value ?? "";
        KeepAddress();
    }

    private void ChooseSitting(ChangeEventArgs change)
    {
        form.Sitting = ((string?)change.Value ?? "").Trim();
        KeepAddress();
    }

    private void ChooseProcedure(ChangeEventArgs change)
    {
        form.Procedure = StickProcedures.Find((string?)change.Value ?? "") ?? form.Procedure;
        (form.Seconds, form.StimulusUncertainty) = (null, null);
        KeepAddress();
    }

    private void KeepAddress() => Navigation.NavigateTo(
        To($"sticks/record?condition={Uri.EscapeDataString(form.Condition)}&sitting={Uri.EscapeDataString(form.Sitting)}&procedure={StickProcedures.Name(form.Procedure)}"), replace: true);

    private async Task Begin()
    {
        (refusal, recovered, isBeginning) = (null, null, true);
        try
        {
            var card = form.Card(Desk!.Name);
            isBegunHere = true;
            await Task.Run(() => Bench.Begin(card));
        }
        catch (Exception exception) when (Obstacle.Is(exception))
        {
            (refusal, isBegunHere) = (exception, false);
        }

        isBeginning = false;
    }

    private Task Seal(SessionKey key) => OfBrokenOff((study, held) =>
        recovered = (key, StickSaid.Of(study.File.Conditions, BrokenOffStick.Seal(study, held, key))));

    private Task Remove(SessionKey key) => OfBrokenOff((study, held) => new StickCapture(study, held, key).Remove());

    private async Task OfBrokenOff(Action<Study, StudyLock> action)
    {
        (refusal, recovered, asksToRemove) = (null, null, null);
        try
        {
            await Task.Run(() => Desk!.Edit(action));
        }
        catch (Exception exception) when (Obstacle.Is(exception))
        {
            refusal = exception;
        }

        await Look();
    }

    private void OnBenchChanged() => _ = InvokeAsync(async () =>
    {
        await Look();
        ChooseNextProcedure();
        StateHasChanged();
    });

    // What is sealed cannot be recorded again in its sitting: the next of the set is what is wanted then.
    private void ChooseNextProcedure()
    {
        if (sight?.Run is { IsOn: false } && isBegunHere && IsSealed(form.Procedure))
        {
            form.Procedure = NextProcedure;
            (form.Seconds, form.StimulusUncertainty) = (null, null);
            KeepAddress();
        }
    }
}
