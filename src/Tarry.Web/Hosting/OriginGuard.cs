using Microsoft.AspNetCore.Http;

namespace Tarry.Web.Hosting;

/// <summary>Refuses what another site's page sends: every request with a foreign <c>Origin</c>, and every one that the browser marks as cross-site.</summary>
internal sealed class OriginGuard(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context)
    {
        if (!IsOwn(context.Request))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        return next(context);
    }

    private static bool IsOwn(HttpRequest request)
    {
        var origin = request.Headers.Origin;
        if (origin.Count > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        // A browser says where a request comes from; "none" is the address bar or a bookmark.
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        return site is "" or "none" or "same-origin" || (site is "same-site" && HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate");
    }
}
