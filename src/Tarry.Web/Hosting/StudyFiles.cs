using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Tarry.Reports.Documents;
using Tarry.Studies;
using Tarry.Web.Desk;
using Tarry.Web.Planning;
using Tarry.Web.Publishing;

namespace Tarry.Web.Hosting;

/// <summary>What of a study is opened in a window of its own or saved: the report before it is published, what is published, the order of runs.</summary>
internal static class StudyFiles
{
    // A document of its own: it brings its style, runs nothing, asks for nothing, and is nobody's frame. A study may come from anybody.
    private const string DocumentPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; sandbox allow-modals";

    private static readonly Dictionary<string, (string Type, bool IsShown)> Types = new(StringComparer.OrdinalIgnoreCase)
    {
        [".html"] = ("text/html; charset=utf-8", true),
        [".svg"] = ("image/svg+xml", true),
        [".png"] = ("image/png", true),
        [".json"] = ("application/json", true),
        [".md"] = ("text/plain; charset=utf-8", true),
        [".csv"] = ("text/csv; charset=utf-8", false),
    };

    public static void MapStudyFiles(this IEndpointRouteBuilder app)
    {
        app.MapGet("/study/{study}/report", Report);
        app.MapGet("/study/{study}/published/{**path}", Published);
        app.MapGet("/study/{study}/order-sheet", Sheet);
        app.MapGet("/study/{study}/order", Order);
    }

    private static Task<IResult> Report(HttpContext context, string study, StudyDesks desks, Publications publications) => Answer(desks, study, async desk =>
    {
        var document = await desk.Findings();
        return Document(context, ReportDocument.Write(document, publications.Draft(desk.Name).Preface));
    });

    private static Task<IResult> Published(HttpContext context, string study, string? path, StudyDesks desks) => Answer(desks, study, desk =>
    {
        if (PublishedFolder.Find(desk.Folder, path ?? "") is not { } file)
        {
            return Task.FromResult(Results.NotFound());
        }

        context.Response.Headers.ContentSecurityPolicy = DocumentPolicy;
        var (type, isShown) = Types.GetValueOrDefault(file.Extension, ("application/octet-stream", false));
        return Task.FromResult(isShown ? Results.File(file.FullName, type) : Results.File(file.FullName, type, file.Name));
    });

    private static Task<IResult> Sheet(HttpContext context, string study, StudyDesks desks) =>
        Planned(context, study, desks, (_, sheet) => Document(context, sheet.ToHtml()));

    private static Task<IResult> Order(HttpContext context, string study, StudyDesks desks) => Planned(context, study, desks, (desk, sheet) =>
    {
        using var text = new StringWriter();
        sheet.WriteTable(text);
        return Results.File(System.Text.Encoding.UTF8.GetBytes(text.ToString()), "text/csv; charset=utf-8", KeptOrder.FileName);
    });

    private static Task<IResult> Planned(HttpContext context, string study, StudyDesks desks, Func<StudyDesk, PlanSheet, IResult> answer) => Answer(desks, study, async desk =>
    {
        var form = new PlanForm(context.Request.Query.ToDictionary(value => value.Key, value => value.Value.ToString()));
        var sheet = PlanSheet.Of(await desk.Findings(), desk.Open().File, form, desk.Name);
        return sheet is { Order.Count: > 0 } ? answer(desk, sheet) : Results.NotFound();
    });

    private static async Task<IResult> Answer(StudyDesks desks, string study, Func<StudyDesk, Task<IResult>> answer)
    {
        if (desks.Of(StudyAddress.Name(study)) is not { } desk)
        {
            return Results.NotFound();
        }

        try
        {
            return await answer(desk);
        }
        catch (StudyException problem)
        {
            return Results.Text($"{problem.Message}\n{problem.Remedy}\n", "text/plain", statusCode: StatusCodes.Status409Conflict);
        }
    }

    private static IResult Document(HttpContext context, string html)
    {
        context.Response.Headers.ContentSecurityPolicy = DocumentPolicy;
        return Results.Content(html, "text/html; charset=utf-8");
    }
}
