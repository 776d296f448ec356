using Microsoft.AspNetCore.Components;
using Tarry.Rig.HostEvents;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;
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
    private IReadOnlyList<UnfinishedSession> unfinished = [];
    private IReadOnlyList<string> sittings = [];
    private SittingOrder? order;
    private (SessionKey Key, OpenRun Asked)? earlier;
    private Study? opened;
    private BenchRun? current;
    private Exception? problem;
    private Exception? refusal;
    private bool isLoaded;
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

    private string Name { get; set; } = "";

    private bool IsBusy => isBeginning || current is { IsOn: true };

    private bool IsOpenSession => unfinished.Any(session => session.Key.Sitting == form.Sitting && session.Key.Condition == form.Condition);

    /// <inheritdoc/>
    public void Dispose() => Bench.Changed -= OnChanged;

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        Bench.Changed += OnChanged;
        await LookForPorts();
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        var before = Name;
        await Load();
        if (Name != before || form.Port.Length == 0)
        {
            Prefill();
        }

        (form.Sitting, form.Condition) = (Sitting ?? form.Sitting, Condition ?? form.Condition);
    }

    private static string Address(string study, string? sitting = null, string? condition = null) =>
        $"bench?study={StudyAddress.Segment(study)}"
        + (string.IsNullOrEmpty(sitting) ? "" : $"&sitting={Uri.EscapeDataString(sitting)}")
        + (string.IsNullOrEmpty(condition) ? "" : $"&condition={Uri.EscapeDataString(condition)}");

    private string? ReferenceOf(BenchRun run) => opened?.File.Reference is { } reference && reference != run.Card.Key.Condition ? reference : null;

    private async Task Load()
    {
        studies = await Summaries.Read();
        Name = StudyName is not null ? StudyAddress.Name(StudyName)
            : Bench.Runs.FirstOrDefault(run => run.IsOn)?.Card.Study
            ?? (studies.Count == 1 ? studies[0].Name : "");
        (opened, current, unfinished, order, earlier, sittings, problem) = (null, null, [], null, null, [], null);
        if (Name.Length > 0)
        {
            await Task.Run(LoadStudy);
        }

        isLoaded = true;
    }

    private void LoadStudy()
    {
        current = Bench.Of(Name);
        try
        {
            var study = Desks.Of(Name)?.Open() ?? throw new StudyException($"There is no study {Name} on the shelf.", null, "It may have been moved or renamed; choose another.");
            unfinished = [.. UnfinishedSession.Of(study, SimulatedDefault.Port).Where(session => current is null || session.Key != current.Card.Key)];
            order = SittingOrder.Of(study, Sitting);
            earlier = current is null ? EarlierSettings.Latest(study, Sitting ?? order.Sitting, SimulatedDefault.Port) : null;
            sittings = [.. study.SessionKeys.Select(key => key.Sitting).Concat(order.Sittings).Distinct()];
            opened = study;
        }
        catch (StudyException exception)
        {
            problem = exception;
        }
    }

    private void Prefill()
    {
        if (current is not null)
        {
            form.Take(current.Card.Key, current.Card.Asked);
            return;
        }

        var port = form.Port.Length > 0 ? form.Port : ports[0];
        if (earlier is { } session)
        {
            form.Take(session.Key, session.Asked with { Port = port, Trials = form.Trials });
            form.Condition = "";
        }

        form.Port = port;
        form.Sitting = order is { Next: not null } planned ? planned.Sitting : form.Sitting;
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
        if (unfinished.FirstOrDefault(session => session.Key.Sitting == step.Run.Sitting && session.Key.Condition == step.Run.Condition) is { TargetIsKnown: true } begun)
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
        await Load();
        StateHasChanged();
    });
}
