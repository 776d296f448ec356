using Microsoft.AspNetCore.Components;
using Tarry.Rig.HostEvents;
using Tarry.Web.Bench;
using Tarry.Web.Desk;
using Tarry.Web.Shelf;

namespace Tarry.Web.Pages;

/// <summary>The bench: what is captured now, what is not finished, and what comes next.</summary>
public sealed partial class BenchPage : IDisposable
{
    private readonly RunForm form = new();
    private IReadOnlyList<StudySummary> studies = [];
    private IReadOnlyList<string> ports = [];
    private IReadOnlyList<HostInputDescription> devices = [];
    private BenchSight? sight;
    private int looks;
    private Exception? refusal;
    private bool isBeginning;

    /// <summary>The study, as a segment of an address.</summary>
    [SupplyParameterFromQuery(Name = "study")]
    public string? StudyName { get; set; }

    /// <summary>The sitting.</summary>
    [SupplyParameterFromQuery]
    public string? Sitting { get; set; }

    /// <summary>The condition.</summary>
    [SupplyParameterFromQuery]
    public string? Condition { get; set; }

    /// <summary>The shelf.</summary>
    [Inject]
    public required StudySummaries Summaries { get; set; }

    /// <summary>The desks.</summary>
    [Inject]
    public required StudyDesks Desks { get; set; }

    /// <summary>The bench.</summary>
    [Inject]
    public required LiveBench Bench { get; set; }

    /// <summary>The ports of this machine.</summary>
    [Inject]
    public required IBenchPorts Ports { get; set; }

    /// <summary>The address bar.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    private string Name => sight?.Name ?? "";

    private bool IsBusy => isBeginning || sight?.Run is { IsOn: true };

    private bool IsOpenSession => sight is not null && sight.Unfinished.Any(session => session.Key.Sitting == form.Sitting && session.Key.Condition == form.Condition);

    /// <inheritdoc/>
    public void Dispose() => Bench.Changed -= OnChanged;

    /// <inheritdoc/>
    protected override void OnInitialized() => Bench.Changed += OnChanged;

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await Look();
        TakeAddress();
    }

    private static string Address(string study, string? sitting = null, string? condition = null) =>
        $"bench?study={StudyAddress.Segment(study)}"
        + (string.IsNullOrEmpty(sitting) ? "" : $"&sitting={Uri.EscapeDataString(sitting)}")
        + (string.IsNullOrEmpty(condition) ? "" : $"&condition={Uri.EscapeDataString(condition)}");

    private string? ReferenceOf(BenchRun run) => sight?.Study?.File.Reference is { } reference && reference != run.Card.Key.Condition ? reference : null;

    // A look takes its time, and what has changed meanwhile is seen by the next: only the newest is shown, and never before the form is filled in.
    private async Task Look()
    {
        var look = ++looks;
        if (ports.Count == 0)
        {
            await LookForPorts();
        }

        var shelf = await Summaries.Read();
        var name = StudyName is not null ? StudyAddress.Name(StudyName)
            : Bench.Runs.FirstOrDefault(run => run.IsOn)?.Card.Study
            ?? (shelf.Count == 1 ? shelf[0].Name : "");
        var seen = await Task.Run(() => BenchSight.Of(Desks, Bench, name, Sitting));
        if (look != looks)
        {
            return;
        }

        var isOther = sight?.Name != seen.Name;
        (studies, sight) = (shelf, seen);
        if (isOther)
        {
            Prefill(seen);
            TakeAddress();
        }
    }

    private void TakeAddress() => (form.Sitting, form.Condition) = (Sitting ?? form.Sitting, Condition ?? form.Condition);

    private void Prefill(BenchSight seen)
    {
        if (seen.Run is { } run)
        {
            form.Take(run.Card.Key, run.Card.Asked);
            return;
        }

        var port = form.Port.Length > 0 ? form.Port : ports[0];
        if (seen.Earlier is { } session)
        {
            form.Take(session.Key, session.Asked with { Port = port, Trials = form.Trials });
            form.Condition = "";
        }

        form.Port = port;
        form.Sitting = seen.Order is { Next: not null } planned ? planned.Sitting : form.Sitting;
    }

    private async Task LookForPorts() => (ports, devices) = await Task.Run(() => (Ports.Names(), Ports.InputDevices()));

    private void Choose(ChangeEventArgs change) => Navigation.NavigateTo(change.Value is string { Length: > 0 } study ? Address(study) : "bench");

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

    private void KeepAddress() => Navigation.NavigateTo(Address(Name, form.Sitting, form.Condition), replace: true);

    private Task Begin() => Begin(() => form.Card(Name));

    private Task BeginStep(SittingStep step)
    {
        if (sight!.Unfinished.FirstOrDefault(session => session.Key.Sitting == step.Run.Sitting && session.Key.Condition == step.Run.Condition) is { TargetIsKnown: true } begun)
        {
            return GoOn(begun);
        }

        (form.Sitting, form.Condition) = (step.Run.Sitting, step.Run.Condition);
        form.Seed = step.Run.Seed ?? form.Seed;
        if (step.Run.Trials is { } trials)
        {
            (form.Target, form.Trials) = (RunTargetKind.Trials, trials);
        }

        return Begin();
    }

    private Task GoOn(UnfinishedSession session)
    {
        form.Take(session.Key, session.Asked!);
        if (session.TargetIsKnown)
        {
            return Begin(() => new RunCard(Name, session.Key, session.Asked!));
        }

        KeepAddress();
        return Task.CompletedTask;
    }

    private async Task Begin(Func<RunCard> card)
    {
        (refusal, isBeginning) = (null, true);
        try
        {
            var asked = card();
            await Task.Run(() => Bench.Begin(asked));
        }
        catch (Exception exception) when (Obstacle.Is(exception))
        {
            refusal = exception;
        }

        isBeginning = false;
    }

    private void OnChanged() => _ = InvokeAsync(async () =>
    {
        await Look();
        StateHasChanged();
    });
}
