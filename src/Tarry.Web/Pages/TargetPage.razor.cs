using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Tarry.Web.Target;

namespace Tarry.Web.Pages;

/// <summary>A patch for the light sensor, behind its caution, never above the flash threshold.</summary>
public sealed partial class TargetPage
{
    private const double UsualIntervalMs = 70;
    private const int UsualSizePx = 96;
    private const int SmallestPx = 8;
    private const int LargestPx = 2000;
    private ElementReference patch;
    private ElementReference count;
    private IJSObjectReference? script;
    private bool isConfirmed;
    private string? begun;

    /// <summary>What changes it: <c>gamepad</c>, <c>key</c> or <c>program</c>.</summary>
    [SupplyParameterFromQuery(Name = "by")]
    public string? AskedBy { get; set; }

    /// <summary>How: <c>held</c> or <c>turn</c>.</summary>
    [SupplyParameterFromQuery(Name = "mode")]
    public string? AskedMode { get; set; }

    /// <summary>The shortest time from press to press.</summary>
    [SupplyParameterFromQuery(Name = "interval_ms")]
    public string? AskedIntervalMs { get; set; }

    /// <summary>Its width.</summary>
    [SupplyParameterFromQuery(Name = "width")]
    public string? AskedWidth { get; set; }

    /// <summary>Its height.</summary>
    [SupplyParameterFromQuery(Name = "height")]
    public string? AskedHeight { get; set; }

    /// <summary>The browser.</summary>
    [Inject]
    public required IJSRuntime Browser { get; set; }

    /// <summary>The address bar.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    private string By => AskedBy is "key" or "program" ? AskedBy : "gamepad";

    private string Mode => AskedMode is "turn" ? AskedMode : "held";

    private double IntervalMs => Asked(AskedIntervalMs) is > 0 and < double.PositiveInfinity and var asked ? asked : UsualIntervalMs;

    private int WidthPx => SizePx(AskedWidth);

    private int HeightPx => SizePx(AskedHeight);

    private double Area => (double)WidthPx * HeightPx;

    private int Flashes => FlashRule.FlashesInASecond(IntervalMs, Mode == "turn");

    private bool IsAllowed => FlashRule.Allows(WidthPx, HeightPx, Flashes);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        try
        {
            await End();
            if (script is not null)
            {
                await script.DisposeAsync();
            }
        }
        catch (JSDisconnectedException)
        {
            // The window is gone, and its script with it.
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        var wanted = isConfirmed && IsAllowed ? $"{By} {Mode} {WidthPx} {HeightPx}" : null;
        if (wanted == begun)
        {
            return;
        }

        await End();
        begun = wanted;
        if (wanted is not null)
        {
            script ??= await Browser.InvokeAsync<IJSObjectReference>("import", "./_content/Tarry.Web/light-target.js");
            await script.InvokeVoidAsync("begin", patch, count, By, Mode, Area > FlashRule.LargestArea ? FlashRule.MostFlashes : 0);
        }
    }

    private static string? Text(ChangeEventArgs change) => change.Value as string;

    private static double Number(ChangeEventArgs change, double otherwise) =>
        double.TryParse(change.Value as string, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : otherwise;

    private async Task End()
    {
        if (begun is not null && script is not null)
        {
            begun = null;
            await script.InvokeVoidAsync("end");
        }
    }

    private static double? Asked(string? text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static int SizePx(string? text) => Asked(text) is { } asked && double.IsFinite(asked) ? (int)Math.Clamp(asked, SmallestPx, LargestPx) : UsualSizePx;

    private void Confirm() => isConfirmed = true;

    private void Set(string? by = null, string? mode = null, double? interval = null, double? width = null, double? height = null) =>
        Navigation.NavigateTo(
            string.Create(
                CultureInfo.InvariantCulture,
                $"target?by={by ?? By}&mode={mode ?? Mode}&interval_ms={interval ?? IntervalMs}&width={(int)Math.Clamp(width ?? WidthPx, 0, LargestPx)}&height={(int)Math.Clamp(height ?? HeightPx, 0, LargestPx)}"),
            replace: true);
}
