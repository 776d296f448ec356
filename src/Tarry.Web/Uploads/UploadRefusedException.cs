namespace Tarry.Web.Uploads;

/// <summary>A file that is not taken in. Nothing of it is left.</summary>
/// <param name="status">The HTTP status of the answer.</param>
/// <param name="message">Why.</param>
/// <param name="remedy">What the user can do.</param>
public sealed class UploadRefusedException(int status, string message, string remedy) : Exception(message)
{
    /// <summary>The HTTP status of the answer.</summary>
    public int Status { get; } = status;

    /// <summary>What the user can do.</summary>
    public string Remedy { get; } = remedy;
}
