namespace Tarry.Web.Publishing;

/// <summary>How far a publication has come.</summary>
/// <param name="Doing">What is being written, in words.</param>
/// <param name="Done">Steps done.</param>
/// <param name="Total">Steps in all.</param>
public readonly record struct PublicationProgress(string Doing, int Done, int Total);
