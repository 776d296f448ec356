using Microsoft.AspNetCore.Http;

namespace Tarry.Web.Hosting;

/// <summary>
/// Gives a page that is opened the cookie of this launch, and refuses whatever changes or streams something without it:
/// websockets without an origin, posts by a script that never opened a page.
/// </summary>
internal sealed class LaunchCookie(RequestDelegate next, LaunchToken token)
{
    public Task InvokeAsync(HttpContext context)
    {
        var name = LaunchToken.CookieName(context.Connection.LocalPort);
        var known = token.Is(context.Request.Cookies[name]);
        var onlyReads = HttpMethods.IsGet(context.Request.Method) || HttpMethods.IsHead(context.Request.Method);
        if (!known && (!onlyReads || context.WebSockets.IsWebSocketRequest || context.Request.Path.StartsWithSegments("/_blazor", StringComparison.OrdinalIgnoreCase)))
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }

        if (!known)
        {
            context.Response.Cookies.Append(name, token.Value, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        }

        return next(context);
    }
}
