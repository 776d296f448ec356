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
    private ImportDesk? import;
    private StudyFile? file;
    private IReadOnlyList<ImportRecord> imports = [];
    private IReadOnlyList<string> sittings = [];
    private IReadOnlyList<string> sessions = [];
    private int gone;
    private Upload? discarded;
    private Exception? problem;

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
        sendings.RemoveAll(sending => sending.Number == number);
        sendings.Add(new OnItsWay(number, ShelfWording.Short(name), percent));
        StateHasChanged();
    }

    /// <summary>Tells that a file is here.</summary>
    [JSInvokable]
    public void Sent(int number, string id)
    {
        sendings.RemoveAll(sending => sending.Number == number);
        discarded = null;
        import?.Forget();
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
        import?.Dispose();
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
        if (!ReadStudy())
        {
            return;
        }

        import ??= new ImportDesk(Desk!, Uploads, Time, () => _ = InvokeAsync(StateHasChanged));
        var found = Ids.Select(Uploads.Of).OfType<Upload>().ToList();
        gone = Ids.Length - found.Count;
        if (!found.SequenceEqual(import.Files))
        {
            await import.Take(found);
        }
    }

    /// <inheritdoc/>
    protected override void OnStudyChanged() => ReadStudy();

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

    private static IEnumerable<(string Value, string Text)> Offered(string none, IReadOnlyList<string> names) => [("", none), .. names.Distinct().Select(name => (name, ShelfWording.Short(name)))];

    private bool ReadStudy()
    {
        try
        {
            if (Desk?.Open() is not { } study)
            {
                return false;
            }

            (file, imports, problem) = (study.File, study.Imports, null);
            sessions = [.. study.SessionKeys.Select(key => key.ToString())];
            sittings = [.. study.Outline.Select(session => session.Key.Sitting).Distinct()];
            return true;
        }
        catch (StudyException refused)
        {
            problem = refused;
            return false;
        }
    }

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

    private async Task Keep() => ShowFiles((await import!.Keep()).Select(upload => upload.Id));

    private IEnumerable<(string Value, string Text)>? ChoicesOf(ImportOption option) => (option.Kind, import!.Choices) switch
    {
        (ImportOptionKind.Choice, _) => option.Choices,
        (ImportOptionKind.Column, { Columns.Count: > 0 } choices) => Offered("by its usual name", choices.Columns),
        (ImportOptionKind.Channel, { Channels.Count: > 0 } choices) => Offered("choose\u2026", choices.Channels),
        (ImportOptionKind.Device, { Devices.Count: > 0 } choices) =>
            [("", ""), .. choices.Devices.Select(device => (device.Id, $"{device.Id}{(device.ProductId is { } id ? $", {id}" : "")}: {Numbers.Count(device.Reports, "report")}"))],
        (ImportOptionKind.DeviceField, { Devices.Count: > 0 } choices) => Offered("", [.. choices.Devices.SelectMany(device => device.Fields)]),
        (ImportOptionKind.Session, _) => Offered("none", sessions),
        (ImportOptionKind.OtherFile, _) => [("", ""), .. import.Files.Skip(1).Select(upload => (upload.Path, ShelfWording.Short(upload.Name)))],
        _ => null,
    };

    private IEnumerable<string>? SuggestionsOf(ImportOption option) => option.Kind switch
    {
        ImportOptionKind.Condition => file?.Conditions.Select(condition => condition.Id),
        ImportOptionKind.Sitting => sittings,
        _ => null,
    };

    private sealed record OnItsWay(int Number, string Name, int Percent);
}
