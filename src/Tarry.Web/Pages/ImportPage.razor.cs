using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Tarry.Imports;
using Tarry.Reports.Wording;
using Tarry.Studies;
using Tarry.Studies.StudyFiles;
using Tarry.Web.Desk;
using Tarry.Web.Importing;
using Tarry.Web.Shelf;
using Tarry.Web.Uploads;

namespace Tarry.Web.Pages;

/// <summary>Brings files in, shows what would be kept and refused of them, and keeps it. The address holds which files wait.</summary>
public sealed partial class ImportPage : IAsyncDisposable
{
    private static readonly (string Value, string Text)[] Formats =
    [
        (ImportFormat.LongForm, "CSV, a row a trial"), (ImportFormat.Logic, "Logic analyser (VCD)"), (ImportFormat.Sound, "Sound (WAV)"),
        (ImportFormat.Video, "Brightness of video frames (CSV)"), ("pcap", "Packet capture (pcap)"), ("pcapng", "Packet capture (pcapng)"), ("btsnoop", "Packet capture (btsnoop)"),
    ];

    private readonly List<OnItsWay> sendings = [];
    private readonly List<(string Name, string Problem, string Remedy)> notSent = [];
    private ElementReference area;
    private ElementReference chooser;
    private IJSObjectReference? script;
    private DotNetObjectReference<ImportPage>? self;
    private StudyFile? file;
    private IReadOnlyList<string> sittings = [];
    private List<Upload> uploads = [];
    private int gone;
    private Upload? discarded;
    private string format = ImportFormat.LongForm;
    private ImportForm form = new();
    private ImportChoices choices = ImportChoices.None;
    private Exception? problem;
    private ImportProgress? reading;
    private ImportPreview? preview;
    private CancellationTokenSource? work;
    private bool keeping;
    private int sealedFiles;
    private string? kept;

    /// <summary>The files that wait.</summary>
    [SupplyParameterFromQuery(Name = "file")]
    public string[]? FileIds { get; set; }

    /// <summary>The files that were brought in.</summary>
    [Inject]
    public required UploadFolder Uploads { get; set; }

    /// <summary>Where the selection is put.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <summary>Takes files from the browser.</summary>
    [Inject]
    public required IJSRuntime Browser { get; set; }

    /// <summary>The clock, for how often progress is shown.</summary>
    [Inject]
    public required TimeProvider Time { get; set; }

    /// <inheritdoc/>
    protected override bool NeedsFindings => false;

    private string[] Ids => FileIds ?? [];

    /// <summary>Tells that a file is on its way.</summary>
    [JSInvokable]
    public void Sending(int number, string name, int percent)
    {
        var known = sendings.FindIndex(sending => sending.Number == number);
        var sending = new OnItsWay(number, ShelfWording.Short(name), percent);
        if (known < 0)
        {
            sendings.Add(sending);
        }
        else
        {
            sendings[known] = sending;
        }

        StateHasChanged();
    }

    /// <summary>Tells that a file is here.</summary>
    [JSInvokable]
    public void Sent(int number, string id)
    {
        sendings.RemoveAll(sending => sending.Number == number);
        (discarded, kept) = (null, null);
        ShowFiles([.. Ids, id]);
    }

    /// <summary>Tells that a file was not taken in.</summary>
    [JSInvokable]
    public void NotSent(int number, string name, string wrong, string remedy)
    {
        sendings.RemoveAll(sending => sending.Number == number);
        notSent.Add((ShelfWording.Short(name), wrong, remedy));
        StateHasChanged();
    }

    /// <summary>Tells that a file was stopped on its way.</summary>
    [JSInvokable]
    public void Stopped(int number)
    {
        sendings.RemoveAll(sending => sending.Number == number);
        StateHasChanged();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Dispose();
        work?.Cancel();
        work?.Dispose();
        self?.Dispose();
        try
        {
            if (script is not null)
            {
                await script.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The window is gone, and the script with it.
        }

        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        await base.OnParametersSetAsync();
        if (Desk is null)
        {
            return;
        }

        try
        {
            var study = Desk.Open();
            file = study.File;
            sittings = [.. study.Outline.Select(session => session.Key.Sitting).Distinct()];
        }
        catch (StudyException refused)
        {
            problem = refused;
            return;
        }

        var found = Ids.Select(Uploads.Of).OfType<Upload>().ToList();
        gone = Ids.Length - found.Count;
        if (found.SequenceEqual(uploads))
        {
            return;
        }

        uploads = found;
        if (uploads.Count > 0)
        {
            await TakeFormat(ImportFormat.Of(uploads[0].Path));
        }
        else
        {
            (preview, problem) = (null, null);
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender && Desk is not null)
        {
            script = await Browser.InvokeAsync<IJSObjectReference>("import", "./_content/Tarry.Web/Pages/ImportPage.razor.js");
            self = DotNetObjectReference.Create(this);
            await script.InvokeVoidAsync("listen", area, chooser, self);
        }
    }

    private static string IdOf(ImportOption option) => option.Name.TrimStart('-');

    private async Task StopSending(int number) => await script!.InvokeVoidAsync("stop", number);

    private void ShowFiles(IEnumerable<string> ids) =>
        Navigation.NavigateTo(Navigation.GetUriWithQueryParameters(new Dictionary<string, object?> { ["file"] = ids.ToArray() }), replace: true);

    private void TakeOff(Upload upload)
    {
        Uploads.Discard(upload.Id);
        discarded = upload;
        ShowFiles(Ids.Where(id => id != upload.Id));
    }

    private void BringBack()
    {
        if (discarded is { } upload)
        {
            Uploads.Restore(upload.Id);
            discarded = null;
            ShowFiles([.. Ids, upload.Id]);
        }
    }

    private async Task TakeFormat(string? chosen)
    {
        format = chosen ?? ImportFormat.LongForm;
        await Look();
    }

    private async Task Take(string option, string? value)
    {
        (form[option], kept) = (value, null);
        await Look();
    }

    private IEnumerable<(string Value, string Text)>? ChoicesOf(ImportOption option) => option.Kind switch
    {
        ImportOptionKind.Choice => option.Choices,
        ImportOptionKind.Column when choices.Columns.Count > 0 => Offered(choices.Columns),
        ImportOptionKind.Channel when choices.Channels.Count > 0 => Offered(choices.Channels),
        ImportOptionKind.Device when choices.Devices.Count > 0 =>
            [("", ""), .. choices.Devices.Select(device => (device.Id, $"{device.Id}{(device.ProductId is { } id ? $", {id}" : "")}: {Numbers.Count(device.Reports, "report")}"))],
        ImportOptionKind.DeviceField when choices.Devices.Count > 0 => Offered([.. choices.Devices.SelectMany(device => device.Fields).Distinct()]),
        ImportOptionKind.OtherFile => [("", ""), .. uploads.Skip(1).Select(upload => (upload.Path, ShelfWording.Short(upload.Name)))],
        _ => null,
    };

    private static IEnumerable<(string Value, string Text)> Offered(IReadOnlyList<string> names) => [("", ""), .. names.Distinct().Select(name => (name, ShelfWording.Short(name)))];

    private IEnumerable<string>? SuggestionsOf(ImportOption option) => option.Kind switch
    {
        ImportOptionKind.Condition => file?.Conditions.Select(condition => condition.Id),
        ImportOptionKind.Sitting => sittings,
        _ => null,
    };

    // A newer look stops the one before it: what is shown is always of what is entered.
    private async Task Look()
    {
        work?.Cancel();
        work?.Dispose();
        work = new CancellationTokenSource();
        var stop = work.Token;
        (preview, problem) = (null, null);
        var paths = uploads.Select(upload => upload.Path).Where(path => path != form["--report-descriptor"]).ToList();
        if (form.ToRequest(paths, format) is not { } request)
        {
            return;
        }

        reading = new ImportProgress(uploads[0].Name, 0, uploads[0].Bytes, 0);
        StateHasChanged();
        try
        {
            var (offered, shown, refused) = await Task.Run(() => Read(request, stop), stop);
            stop.ThrowIfCancellationRequested();
            (choices, preview, problem, reading) = (offered, shown, refused, null);
        }
        catch (OperationCanceledException)
        {
            if (work?.Token == stop)
            {
                reading = null;
            }
        }
    }

    private (ImportChoices Choices, ImportPreview? Preview, Exception? Problem) Read(ImportRequest request, CancellationToken stop)
    {
        var offered = ImportChoices.None;
        try
        {
            offered = ImportChoices.Of(request.Files[0], request.Format, request.Text.Delimiter, stop);
            var progress = new LatestProgress(Time, value => _ = InvokeAsync(() =>
            {
                if (!stop.IsCancellationRequested && reading is not null)
                {
                    reading = value;
                    StateHasChanged();
                }
            }));
            return (offered, ImportPreview.Of(request, Desk!.Open(), progress, stop), null);
        }
        catch (Exception refused) when (refused is ImportException or StudyException or IOException or UnauthorizedAccessException)
        {
            return (offered, null, refused);
        }
    }

    private void StopReading() => work?.Cancel();

    private void StopKeeping() => work?.Cancel();

    private async Task Keep()
    {
        var shown = preview!;
        work?.Dispose();
        work = new CancellationTokenSource();
        var stop = work.Token;
        (keeping, sealedFiles, problem) = (true, 0, null);
        StateHasChanged();
        try
        {
            await Task.Run(() => Desk!.Edit((study, held) => ImportPlan.AddAll(shown.Plans, study, held, _ => Sealed(stop))), stop);
        }
        catch (Exception refused) when (refused is ImportException or StudyException or IOException or UnauthorizedAccessException)
        {
            problem = refused;
        }
        catch (OperationCanceledException)
        {
            // Stopped between two files; those that are sealed stay.
        }

        keeping = false;
        TellKept(shown.Plans.Take(sealedFiles).ToList());
    }

    private void Sealed(CancellationToken stop)
    {
        sealedFiles++;
        _ = InvokeAsync(StateHasChanged);
        stop.ThrowIfCancellationRequested();
    }

    // Several files are of one format that takes a plan a file, in the order in which they were brought in.
    private void TellKept(List<ImportPlan> plans)
    {
        if (plans.Count == 0)
        {
            return;
        }

        var rest = plans.Count == preview!.Plans.Count ? [] : uploads.Skip(plans.Count).ToList();
        foreach (var upload in uploads.Except(rest))
        {
            Uploads.Remove(upload.Id);
        }

        (preview, form) = (null, rest.Count == 0 ? new ImportForm() : form);
        ShowFiles(rest.Select(upload => upload.Id));
        kept = $"Kept: {Numbers.Whole(plans.Sum(plan => plan.Record.RowsKept))} in {Numbers.Count(plans.Sum(plan => plan.Keys.Count()), "session")}{(rest.Count == 0 ? "" : ", then stopped")}.";
    }

    private sealed record OnItsWay(int Number, string Name, int Percent);
}
