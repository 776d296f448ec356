using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Tarry.Tests;
using Tarry.Web.Desk;
using Tarry.Web.Hosting;
using Tarry.Web.Shelf;

namespace Tarry.Web.Tests.Pages;

/// <summary>A shelf with one small study on it, and pages rendered without a browser.</summary>
public sealed class StoredShelf : IDisposable
{
    private readonly StoredStudy stored = new();

    /// <summary>A shelf with the study on it.</summary>
    public StoredShelf()
    {
        var options = new ServeOptions(stored.Parent, 0, "test");
        Desks = new StudyDesks(new StudyShelf(options), options);
    }

    /// <summary>The desks, whose findings all pages of this shelf share.</summary>
    public StudyDesks Desks { get; }

    /// <summary>The study's folder.</summary>
    public string Folder => stored.Folder;

    /// <summary>The folder of studies.</summary>
    public string Parent => stored.Parent;

    /// <summary>The study's desk.</summary>
    public StudyDesk Desk => Desks.Of(StoredStudy.Name)!;

    /// <summary>A page at an address, once its findings are there.</summary>
    /// <param name="context">Where it is rendered.</param>
    /// <param name="query">What follows the page's name in the address.</param>
    /// <param name="id">The condition; null for a page that is of none.</param>
    /// <param name="study">The study's segment of the address.</param>
    internal IRenderedComponent<T> Open<T>(BunitContext context, string query = "", string? id = null, string? study = null)
        where T : StudyPage
    {
        context.Services.AddSingleton(Desks);
        context.SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        var navigation = context.Services.GetRequiredService<NavigationManager>();
        navigation.NavigateTo($"study/{study ?? StoredStudy.Name}/page{query}");
        var page = context.Render<T>(parameters =>
        {
            parameters.Add(page => page.Study, study ?? StoredStudy.Name);
            if (id is not null)
            {
                parameters.TryAdd("Id", id);
            }
        });
        page.WaitForState(() => !page.Markup.Contains("Working out what the study says", StringComparison.Ordinal), TimeSpan.FromSeconds(60));
        return page;
    }

    public void Dispose() => stored.Dispose();
}
