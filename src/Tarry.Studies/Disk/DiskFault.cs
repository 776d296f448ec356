namespace Tarry.Studies.Disk;

/// <summary>Words what the operating system says of a disk.</summary>
internal static class DiskFault
{
    // errno.h of Linux and macOS, and winerror.h (as HRESULT); .NET gives these as IOException.HResult.
    private const int NoSpace = 28;
    private const int ReadOnly = 30;
    private const int QuotaOnLinux = 122;
    private const int QuotaOnMac = 69;
    private const int HandleDiskFull = unchecked((int)0x80070027);
    private const int DiskFull = unchecked((int)0x80070070);
    private const int WriteProtected = unchecked((int)0x80070013);

    /// <summary>Whether this is the disk's fault at all.</summary>
    public static bool Is(Exception exception) => exception is IOException or UnauthorizedAccessException;

    /// <summary>The same as a study's error.</summary>
    public static StudyDiskException Describe(Exception exception, string place, string? whatIsSafe = null)
    {
        var (what, remedy) = exception switch
        {
            { HResult: NoSpace or HandleDiskFull or DiskFull } => ("The disk is full", "Free some space and try again."),
            { HResult: QuotaOnLinux or QuotaOnMac } => ("The disk quota is used up", "Free some space and try again."),
            { HResult: ReadOnly or WriteProtected } => ("The disk is read-only", "Copy the study to a place that can be written."),
            UnauthorizedAccessException => ("Writing or reading is not permitted", "Check who may write to the folder, or copy the study to a place that can be written."),
            _ => ("The disk failed", "Check that the disk is connected and has space, then try again."),
        };
        var safe = whatIsSafe is null ? "" : $" {whatIsSafe}";
        return new StudyDiskException($"{what}: {place}.{safe} ({exception.Message})", place, remedy, exception);
    }
}
