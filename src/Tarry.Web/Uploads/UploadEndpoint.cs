using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;

namespace Tarry.Web.Uploads;

/// <summary>Where a page sends a file to: the body of a POST, streamed to the disk.</summary>
/// <remarks>
/// It takes nothing without the launch's cookie and from no other origin (<c>LaunchCookie</c>, <c>OriginGuard</c>), and nothing without a
/// header of its own: a form of another site cannot set one, and a script of it would first have to ask, which nothing here answers.
/// </remarks>
internal static class UploadEndpoint
{
    /// <summary>The header that only a page of this app sets.</summary>
    public const string Header = "X-Tarry-Upload";

    public static void MapUploads(this IEndpointRouteBuilder app) => app.MapPost("/uploads", Receive);

    private static async Task<IResult> Receive(HttpContext context, UploadFolder uploads, string? name, CancellationToken cancellation)
    {
        if (context.Request.Headers[Header] != "1")
        {
            return Results.Json(new Refused("This is not a page of this app.", "Bring the file in on the page Import of a study."), statusCode: StatusCodes.Status403Forbidden);
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = uploads.Limits.MostBytes + 1;
        }

        try
        {
            var upload = await uploads.Receive(name ?? "", context.Request.ContentLength, context.Request.Body, cancellation);
            return Results.Json(new Received(upload.Id));
        }
        catch (UploadRefusedException refused)
        {
            return Results.Json(new Refused(refused.Message, refused.Remedy), statusCode: refused.Status);
        }
        catch (BadHttpRequestException refused)
        {
            return Results.Json(new Refused(refused.Message, "Bring it in again."), statusCode: refused.StatusCode);
        }
        catch (IOException failure)
        {
            return Results.Json(new Refused($"It could not be taken in: {failure.Message}", "See that the disk of the temporary folder has room."), statusCode: StatusCodes.Status507InsufficientStorage);
        }
    }

    private sealed record Received(string Id);

    private sealed record Refused(string Problem, string Remedy);
}
