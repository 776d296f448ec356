using Microsoft.Playwright;

namespace Tarry.Web.Tests.Browser;

/// <summary>How a user does what a page offers.</summary>
internal interface IHand
{
    /// <summary>Follows a link or presses a button.</summary>
    Task Press(ILocator control);

    /// <summary>Writes into a field in place of what is there.</summary>
    Task Write(ILocator field, string text);

    /// <summary>Chooses an option by what it says.</summary>
    Task Choose(ILocator list, string option);

    /// <summary>Ticks a box, or takes the tick out.</summary>
    Task Tick(ILocator box, bool isOn);
}
