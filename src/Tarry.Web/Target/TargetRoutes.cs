using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Hosting;

namespace Tarry.Web.Target;

/// <summary>The addresses by which presses reach the light target from a program on this machine.</summary>
internal static class TargetRoutes
{
    /// <summary><c>POST /target/press?is=begun|ended</c>, and the stream that the target listens to.</summary>
    public static void MapTarget(this IEndpointRouteBuilder app)
    {
        app.MapPost("/target/press", (string @is, PressFeed feed) =>
        {
            if (@is is not ("begun" or "ended"))
            {
                return Results.BadRequest("Say is=begun or is=ended.");
            }

            feed.Tell(@is == "begun");
            return Results.NoContent();
        });
        app.MapGet("/target/presses", (PressFeed feed, HttpContext context, IHostApplicationLifetime lifetime) =>
        {
            var open = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, lifetime.ApplicationStopping);
            context.Response.RegisterForDispose(open);
            return TypedResults.ServerSentEvents(feed.Listen(open.Token));
        });
    }
}
