using Microsoft.AspNetCore.Components;
using Tarry.Imports;
using Tarry.Imports.DelimitedText;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Importing;

/// <summary>What one file would add to a study.</summary>
public sealed partial class ImportedFile
{
    private const int MostSessions = 60;
    private const int MostRefused = 100;

    /// <summary>The file as it was read.</summary>
    [Parameter]
    [EditorRequired]
    public required ImportPlan Plan { get; set; }

    private string Row => Plan.StickSessions.Count > 0 ? "position" : Plan.ReportSessions.Count > 0 ? "report" : Plan.Record.Format == DelimitedTextImport.Format ? "row" : "trial";

    private List<(SessionKey Key, int Count)> Sessions =>
    [
        .. Plan.Sessions.Select(session => (session.Record.Key, session.Trials.Count)),
        .. Plan.StickSessions.Select(session => (session.Record.Key, session.Samples.Count)),
        .. Plan.ReportSessions.Select(session => (session.Record.Key, session.Reports.Count)),
    ];
}
