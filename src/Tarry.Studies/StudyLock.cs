using System.Text.Json;
using Tarry.Studies.Disk;

namespace Tarry.Studies;

/// <summary>The right to write to a study, until disposed. The operating system frees it when the program ends, however it ends.</summary>
public sealed class StudyLock : IDisposable
{
    private readonly FileStream _held;
    private readonly StudyPaths _paths;
    private bool _released;

    private StudyLock(StudyPaths paths, FileStream held, LockHolder holder)
    {
        _paths = paths;
        _held = held;
        Holder = holder;
    }

    /// <summary>Who holds it.</summary>
    public LockHolder Holder { get; }

    /// <summary>Gives the right back.</summary>
    public void Dispose()
    {
        if (!_released)
        {
            _released = true;
            DurableFile.Remove(_paths.LockHolder);
            _held.Dispose();
        }
    }

    internal static StudyLock Acquire(StudyPaths paths, string program, TimeProvider time)
    {
        var held = Open(paths);
        var holder = new LockHolder(program, Environment.ProcessId, Environment.MachineName, time.GetUtcNow());
        try
        {
            File.WriteAllBytes(paths.LockHolder, StudyJson.File(holder));
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            held.Dispose();
            throw DiskFault.Describe(exception, paths.Relative(paths.LockHolder));
        }

        return new StudyLock(paths, held, holder);
    }

    internal void RequireHeldFor(StudyPaths paths)
    {
        ObjectDisposedException.ThrowIf(_released, this);
        if (_paths.Folder != paths.Folder)
        {
            throw new ArgumentException($"The lock is of the study in {_paths.Folder}, not of {paths.Folder}.");
        }
    }

    private static FileStream Open(StudyPaths paths)
    {
        try
        {
            return new FileStream(paths.Lock, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException exception) when (IsHeld(exception))
        {
            var holder = ReadHolder(paths);
            var who = holder is null
                ? "another program"
                : $"{holder.Program} (process {holder.ProcessId} on {holder.Machine}, since {holder.Since:u})";
            throw new StudyLockedException($"The study in {paths.Folder} is being written to by {who}.", holder);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.Lock));
        }
    }

    private static bool IsHeld(IOException exception)
    {
        // ERROR_SHARING_VIOLATION; EWOULDBLOCK of Linux and of macOS, from flock.
        const int sharingViolation = unchecked((int)0x80070020);
        return exception.HResult is sharingViolation or 11 or 35;
    }

    private static LockHolder? ReadHolder(StudyPaths paths)
    {
        try
        {
            return StudyJson.Read<LockHolder>(File.ReadAllBytes(paths.LockHolder));
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is JsonException)
        {
            return null;
        }
    }
}
