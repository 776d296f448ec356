using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Tarry.Reports.Figures;
using Tarry.Web.Bench;
using Tarry.Web.Desk;
using Tarry.Web.Publishing;
using Tarry.Web.Shelf;
using Tarry.Web.Target;
using Tarry.Web.Uploads;

namespace Tarry.Web.Hosting;

/// <summary>The web app on the loopback address: its parts put together.</summary>
public static class WebBench
{
    /// <summary>The app, not started.</summary>
    /// <param name="options">What it serves, and where.</param>
    public static WebApplication Build(ServeOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);

        // The program's own folder, so that pages are found from whatever folder it is started in.
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, ApplicationName = "tarry" });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(server => Listen(server, options.Port));
        // Said otherwise, or nothing to the tester: a port that is taken, and a cookie that an earlier launch left in the browser.
        builder.Logging.ClearProviders().AddConsole().SetMinimumLevel(LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error)
            .AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.None)
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        AddServices(builder.Services, options);

        var app = builder.Build();
        // Before windows lose their connection: a run ends with its trial in flight, and its journal is whole.
        app.Lifetime.ApplicationStopping.Register(app.Services.GetRequiredService<LiveBench>().StopAll);
        app.UseHostFiltering();
        app.UseMiddleware<OriginGuard>();
        app.UseMiddleware<ContentPolicy>();
        app.UseMiddleware<LaunchCookie>();
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseWebSockets();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/colours.css", () => Results.Text(FigureStyleSheet.ForPage(), "text/css"));
        app.MapUploads();
        app.MapStudyFiles();
        app.MapTarget();
        app.MapRazorComponents<Pages.App>()
            .AddInteractiveServerRenderMode(render => render.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    private static void Listen(KestrelServerOptions server, int port)
    {
        server.AddServerHeader = false;
        server.Listen(IPAddress.Loopback, port);
        if (port != 0 && System.Net.Sockets.Socket.OSSupportsIPv6)
        {
            server.Listen(IPAddress.IPv6Loopback, port);
        }
    }

    private static void AddServices(IServiceCollection services, ServeOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<LaunchToken>();
        services.AddSingleton<StudyShelf>();
        services.AddSingleton<StudyDesks>();
        services.AddSingleton<StudySummaries>();
        services.AddSingleton<Demonstration>();
        services.AddSingleton(UploadLimits.Usual);
        services.AddSingleton<UploadFolder>();
        services.AddSingleton<Publications>();
        services.AddSingleton<IBenchPorts, BenchPorts>();
        services.AddSingleton<LiveBench>();
        services.AddSingleton<PressFeed>();
        services.Configure<HostFilteringOptions>(hosts =>
        {
            hosts.AllowedHosts = ["127.0.0.1", "localhost", "[::1]"];
            hosts.AllowEmptyHosts = false;
            hosts.IncludeFailureMessage = false;
        });
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddAntiforgery(antiforgery => antiforgery.Cookie.SameSite = SameSiteMode.Strict);
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddCascadingValue(_ => new CascadingValueSource<ServeOptions>(options, isFixed: true));
    }
}
