using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace Tarry.Web.Uploads;

/// <summary>The files that were brought in and wait to be imported: in a temporary folder of this launch, outside of every study, deleted with it.</summary>
/// <param name="limits">What may be brought in.</param>
/// <param name="time">The clock, for how long one waits.</param>
public sealed class UploadFolder(UploadLimits limits, TimeProvider time) : IDisposable
{
    private const string Prefix = "tarry-uploads-";
    private const int ChunkBytes = 1 << 16;
    private readonly ConcurrentDictionary<string, (Upload Upload, DateTimeOffset Since, bool Discarded)> waiting = new(StringComparer.Ordinal);
    private readonly Lazy<string> root = new(() => MakeRoot(time));
    private long reserved;

    /// <summary>What may be brought in.</summary>
    public UploadLimits Limits { get; } = limits;

    /// <summary>Takes a file in as it comes, without ever holding it in memory.</summary>
    /// <param name="givenName">Its name, of which only a harmless part is used.</param>
    /// <param name="statedBytes">How long it says that it is; null if it does not.</param>
    /// <param name="content">Its bytes.</param>
    /// <param name="cancellation">Stops; nothing is left.</param>
    /// <exception cref="UploadRefusedException">It is empty or too long, or there is no room. Nothing is left of it.</exception>
    public async Task<Upload> Receive(string givenName, long? statedBytes, Stream content, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(givenName);
        ArgumentNullException.ThrowIfNull(content);
        RemoveExpired();
        Require(statedBytes ?? 0);
        var id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        var folder = Directory.CreateDirectory(Path.Combine(root.Value, id)).FullName;
        var path = Path.Combine(folder, UploadName.Of(givenName));
        try
        {
            var (bytes, sha256) = await Write(path, content, cancellation);
            if (bytes == 0 || (statedBytes is { } stated && stated != bytes))
            {
                throw bytes == 0
                    ? new UploadRefusedException(400, "The file is empty.", "Choose a file with data in it.")
                    : new UploadRefusedException(400, "The file did not come whole.", "Bring it in again.");
            }

            var upload = new Upload(id, path, bytes, sha256, givenName);
            waiting[id] = (upload, time.GetUtcNow(), false);
            return upload;
        }
        catch
        {
            Delete(folder);
            throw;
        }
    }

    /// <summary>A file that waits, by its id; null where none does.</summary>
    public Upload? Of(string id) => waiting.TryGetValue(id, out var entry) && !entry.Discarded ? entry.Upload : null;

    /// <summary>Lets a file go; until it expires it can be brought back.</summary>
    public void Discard(string id) => Mark(id, discarded: true);

    /// <summary>Brings back what was let go.</summary>
    public void Restore(string id) => Mark(id, discarded: false);

    /// <summary>Deletes a file that is no longer needed, such as after its import.</summary>
    public void Remove(string id)
    {
        if (waiting.TryRemove(id, out var entry))
        {
            Delete(Path.GetDirectoryName(entry.Upload.Path)!);
        }
    }

    /// <summary>Deletes them all.</summary>
    public void Dispose()
    {
        if (root.IsValueCreated)
        {
            Delete(root.Value);
        }
    }

    private static string MakeRoot(TimeProvider time)
    {
        // What a launch that was killed has left.
        foreach (var old in Directory.EnumerateDirectories(Path.GetTempPath(), Prefix + "*"))
        {
            if (time.GetUtcNow() - Directory.GetLastWriteTimeUtc(old) > TimeSpan.FromDays(2))
            {
                Delete(old);
            }
        }

        return Directory.CreateTempSubdirectory(Prefix).FullName;
    }

    private static void Delete(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // The system clears its temporary folder.
        }
    }

    private async Task<(long Bytes, string Sha256)> Write(string path, Stream content, CancellationToken cancellation)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, useAsync: true);
        await using (file.ConfigureAwait(false))
        {
            var chunk = new byte[ChunkBytes];
            long bytes = 0;
            try
            {
                for (var read = await content.ReadAsync(chunk, cancellation); read > 0; read = await content.ReadAsync(chunk, cancellation))
                {
                    bytes += read;
                    Interlocked.Add(ref reserved, read);
                    if (bytes > Limits.MostBytes)
                    {
                        throw TooLong();
                    }

                    // Once every 16 MB: a length may have been stated wrong, or by nobody.
                    if (bytes % (256 * ChunkBytes) < read)
                    {
                        Require(0);
                    }

                    hash.AppendData(chunk, 0, read);
                    await file.WriteAsync(chunk.AsMemory(0, read), cancellation);
                }
            }
            finally
            {
                Interlocked.Add(ref reserved, -bytes);
            }

            return (bytes, Convert.ToHexStringLower(hash.GetCurrentHash()));
        }
    }

    private void Require(long more)
    {
        if (more > Limits.MostBytes)
        {
            throw TooLong();
        }

        if (waiting.Values.Sum(entry => entry.Upload.Bytes) + Interlocked.Read(ref reserved) + more > Limits.MostBytesInAll)
        {
            throw new UploadRefusedException(507, "Too much waits to be imported already.", "Import or remove what waits, then bring this in.");
        }

        if (new DriveInfo(root.Value).AvailableFreeSpace - more < Limits.LeastFreeBytes)
        {
            throw new UploadRefusedException(507, "The disk has too little room for it.", "Make room on the disk of the temporary folder, or import it with 'tarry import', which copies nothing.");
        }
    }

    private UploadRefusedException TooLong() => new(
        413,
        $"The file is longer than {Limits.MostBytes / 1_000_000:N0} MB, the most that is taken in here.",
        "Import it with 'tarry import', which has no such limit and copies nothing.");

    private void Mark(string id, bool discarded)
    {
        if (waiting.TryGetValue(id, out var entry))
        {
            waiting[id] = entry with { Discarded = discarded };
        }
    }

    private void RemoveExpired()
    {
        foreach (var (id, (_, since, _)) in waiting)
        {
            if (time.GetUtcNow() - since > Limits.KeptFor)
            {
                Remove(id);
            }
        }
    }
}
