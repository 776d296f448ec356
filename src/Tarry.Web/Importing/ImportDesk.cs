using Tarry.Imports;
using Tarry.Reports.Wording;
using Tarry.Studies;
using Tarry.Web.Desk;
using Tarry.Web.Uploads;

namespace Tarry.Web.Importing;

/// <summary>The import of files that were brought in, from reading them to keeping them; what is shown is always of what is entered.</summary>
/// <param name="study">The study.</param>
/// <param name="uploads">Where the files wait.</param>
/// <param name="time">The clock, for how often progress is told.</param>
/// <param name="changed">Told, on any thread, when something else is to be shown.</param>
internal sealed class ImportDesk(StudyDesk study, UploadFolder uploads, TimeProvider time, Action changed) : IDisposable
{
    private CancellationTokenSource work = new();

    /// <summary>The files.</summary>
    public IReadOnlyList<Upload> Files { get; private set; } = [];

    /// <summary>Their format.</summary>
    public string Format { get; private set; } = ImportFormat.LongForm;

    /// <summary>How they are to be read.</summary>
    public ImportForm Form { get; private set; } = new();

    /// <summary>What the first of them offers to choose from.</summary>
    public ImportChoices Choices { get; private set; } = ImportChoices.None;

    /// <summary>How far the reading has come; null where nothing is being read.</summary>
    public ImportProgress? Reading { get; private set; }

    /// <summary>What would be kept; null where that is not known.</summary>
    public ImportPreview? Preview { get; private set; }

    /// <summary>What went wrong; null where nothing did.</summary>
    public Exception? Problem { get; private set; }

    /// <summary>Whether files are being sealed.</summary>
    public bool IsKeeping { get; private set; }

    /// <summary>How many of them are sealed.</summary>
    public int SealedFiles { get; private set; }

    /// <summary>What was kept last, in words; null where nothing was.</summary>
    public string? Kept { get; private set; }

    /// <summary>Takes other files, and reads them.</summary>
    public async Task Take(IReadOnlyList<Upload> files)
    {
        Files = files;
        if (files.Count == 0)
        {
            Stop();
            (Preview, Problem, Reading) = (null, null, null);
            return;
        }

        await TakeFormat(ImportFormat.Of(files[0].Path));
    }

    /// <summary>Takes another format, and reads the files as that.</summary>
    public Task TakeFormat(string format)
    {
        Format = format;
        return Read();
    }

    /// <summary>Takes the value of an option, and reads the files by it.</summary>
    public Task Take(string option, string? value)
    {
        (Form[option], Kept) = (value, null);
        return Read();
    }

    /// <summary>Forgets what was kept last.</summary>
    public void Forget() => Kept = null;

    /// <summary>Stops the reading at once, or the keeping after the file that is being sealed.</summary>
    public void Stop() => work.Cancel();

    /// <summary>Keeps what is shown.</summary>
    /// <returns>The files that are left: none, or those after the one at which it was stopped.</returns>
    public async Task<IReadOnlyList<Upload>> Keep()
    {
        var plans = Preview!.Plans;
        var stop = Begin();
        (IsKeeping, SealedFiles, Problem) = (true, 0, null);
        changed();
        try
        {
            await Task.Run(() => study.Edit((opened, held) => ImportPlan.AddAll(plans, opened, held, _ => Sealed(stop))), stop);
        }
        catch (Exception refused) when (IsExpected(refused))
        {
            Problem = refused;
        }
        catch (OperationCanceledException)
        {
            // Between two files; those that are sealed stay.
        }

        IsKeeping = false;
        return SealedFiles == 0 ? Files : Rest(plans);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        work.Cancel();
        work.Dispose();
    }

    private static bool IsExpected(Exception problem) => problem is ImportException or StudyException or IOException or UnauthorizedAccessException;

    private CancellationToken Begin()
    {
        work.Cancel();
        work.Dispose();
        work = new CancellationTokenSource();
        return work.Token;
    }

    private void Sealed(CancellationToken stop)
    {
        SealedFiles++;
        changed();
        stop.ThrowIfCancellationRequested();
    }

    // Several files are of the one format that gives a plan a file, in their order.
    private IReadOnlyList<Upload> Rest(IReadOnlyList<ImportPlan> plans)
    {
        var isAll = SealedFiles == plans.Count;
        IReadOnlyList<Upload> rest = isAll ? [] : [.. Files.Skip(SealedFiles)];
        foreach (var upload in Files.Except(rest))
        {
            uploads.Remove(upload.Id);
        }

        var kept = plans.Take(SealedFiles).ToList();
        Kept = $"Kept: {Numbers.Whole(kept.Sum(plan => plan.Record.RowsKept))} in {Numbers.Count(kept.Sum(plan => plan.Keys.Count()), "session")}{(isAll ? "" : ", then stopped")}.";
        Preview = null;
        Form = isAll ? new ImportForm() : Form;
        return rest;
    }

    private async Task Read()
    {
        var stop = Begin();
        (Preview, Problem, Reading) = (null, null, null);
        var paths = Files.Select(file => file.Path).Where(path => path != Form["--report-descriptor"]).ToList();
        if (paths.Count == 0 || Form.ToRequest(paths, Format) is not { } request)
        {
            changed();
            return;
        }

        Reading = new ImportProgress(Files[0].Name, 0, Files[0].Bytes, 0);
        changed();
        var (choices, preview, problem) = await Task.Run(() => Read(request, stop), CancellationToken.None);
        if (!stop.IsCancellationRequested)
        {
            (Choices, Preview, Problem, Reading) = (choices, preview, problem, null);
        }
        else if (work.Token == stop)
        {
            Reading = null;
        }

        changed();
    }

    private (ImportChoices Choices, ImportPreview? Preview, Exception? Problem) Read(ImportRequest request, CancellationToken stop)
    {
        var choices = ImportChoices.None;
        try
        {
            choices = ImportChoices.Of(request.Files[0], request.Format, request.Text.Delimiter, stop);
            return (choices, ImportPreview.Of(request, study.Open(), new LatestProgress(time, value => Show(value, stop)), stop), null);
        }
        catch (OperationCanceledException)
        {
            return (choices, null, null);
        }
        catch (Exception refused) when (IsExpected(refused))
        {
            return (choices, null, refused);
        }
    }

    private void Show(ImportProgress value, CancellationToken stop)
    {
        if (!stop.IsCancellationRequested)
        {
            Reading = value;
            changed();
        }
    }
}
