using Tarry.Findings;
using Tarry.Imports.LongForm;
using Tarry.Reports.DataPackage;
using Tarry.Reports.Figures;
using Tarry.Reports.Publishing;
using Tarry.Studies;

namespace Tarry.Web.Publishing;

/// <summary>Writes what a draft asks for into the study's folder <c>report</c>; every file whole or not at all.</summary>
internal static class Publication
{
    /// <summary>Writes it.</summary>
    /// <param name="study">The study.</param>
    /// <param name="document">Its findings.</param>
    /// <param name="draft">What is asked for.</param>
    /// <param name="show">Told how far it has come; called on any thread.</param>
    /// <param name="cancellation">Stops between two files.</param>
    /// <returns>The folder written to.</returns>
    public static string Write(Study study, FindingsDocument document, PublicationDraft draft, Action<PublicationProgress> show, CancellationToken cancellation)
    {
        var folder = PublishedFolder.Of(study.Folder, draft.Subfolder);
        string[] figures = [.. StudyFigures.Of(document).Select(figure => figure.Name).Where(name => !draft.LeftOut.Contains(name))];
        var drawings = draft.Figures ? 4 * figures.Length : 0;
        var total = (draft.Report ? 1 : 0) + drawings + (draft.Tables ? 2 : 0) + (draft.Package ? 1 : 0);
        var done = 0;
        if (draft.Report)
        {
            Begin("the report");
            ReportFiles.Write(document, folder, draft.Preface);
            done++;
        }

        if (draft.Figures)
        {
            var before = done;
            var drawn = new Drawn(count => show(new PublicationProgress("the figures", before + count, total)));
            FigureFiles.Write(document, Path.Combine(folder, "figures"), figures, drawn, cancellation);
            done += drawings;
        }

        if (draft.Tables)
        {
            Begin("the tables");
            WholeFile.Write(Path.Combine(folder, "tables", HeadlineTable.FileName), writer => writer.Write(HeadlineTable.Write(document)));
            if (document.Sticks is { } sticks)
            {
                WholeFile.Write(Path.Combine(folder, "tables", StickFindingsTable.FileName), writer => writer.Write(StickFindingsTable.Write(sticks)));
            }

            done++;
            Begin("the trials");
            WholeFile.Write(Path.Combine(folder, "tables", "trials.csv"), writer => StudyTrials.WriteCsv(study, writer, cancellation));
            done++;
        }

        if (draft.Package)
        {
            Begin("the data package");
            var licence = draft.Licence is { } id ? Licence.FromId(id) : null;
            DataPackageFolder.Write(Path.Combine(folder, "package"), StudyPackage.Content(study, document, licence, draft.Author, draft.Version, cancellation));
            done++;
        }

        show(new PublicationProgress("done", done, total));
        return folder;

        void Begin(string what)
        {
            cancellation.ThrowIfCancellationRequested();
            show(new PublicationProgress(what, done, total));
        }
    }

    private sealed class Drawn(Action<int> show) : IProgress<(int Done, int Total)>
    {
        public void Report((int Done, int Total) value) => show(value.Done);
    }
}
