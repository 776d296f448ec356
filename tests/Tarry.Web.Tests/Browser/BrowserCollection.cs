namespace Tarry.Web.Tests.Browser;

/// <summary>Tests in the browser share it, and run one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserCollection : ICollectionFixture<Chromium>, ICollectionFixture<DemoShelf>
{
    /// <summary>Its name.</summary>
    public const string Name = "browser";
}
