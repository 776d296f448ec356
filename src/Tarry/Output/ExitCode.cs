namespace Tarry.Output;

/// <summary>What the program says to the shell.</summary>
internal static class ExitCode
{
    public const int Done = 0;

    /// <summary>The data says no: a check failed, or a file is damaged.</summary>
    public const int DataSaysNo = 1;

    /// <summary>Wrong use, or input of which nothing could be kept.</summary>
    public const int WrongUse = 2;

    /// <summary>The rig or the disk failed.</summary>
    public const int RigOrDiskFailed = 3;

    /// <summary>Stopped by the user; all captured trials are kept.</summary>
    public const int Stopped = 130;
}
