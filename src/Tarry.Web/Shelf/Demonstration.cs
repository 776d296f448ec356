using Tarry.Studies;
using Tarry.Web.Hosting;

namespace Tarry.Web.Shelf;

/// <summary>The demonstration's study being made on the shelf: one for all windows.</summary>
/// <param name="options">How it is made, and where the shelf is.</param>
public sealed class Demonstration(ServeOptions options) : IDisposable
{
    private const string Name = "demo";
    private readonly Lock gate = new();
    private CancellationTokenSource stop = new();

    /// <summary>Raised, on any thread, when it has come further.</summary>
    public event Action? Changed;

    /// <summary>Whether this program can make one.</summary>
    public bool IsOffered => options.MakeDemonstration is not null;

    /// <summary>Whether it is under way.</summary>
    public bool IsRunning { get; private set; }

    /// <summary>Sessions captured, and of how many.</summary>
    public (int Done, int Total) Progress { get; private set; }

    /// <summary>Why it failed; null where it did not.</summary>
    public Exception? Problem { get; private set; }

    /// <summary>Begins it; one that is under way goes on.</summary>
    public void Begin()
    {
        lock (gate)
        {
            if (IsRunning || options.MakeDemonstration is not { } make)
            {
                return;
            }

            stop.Dispose();
            stop = new CancellationTokenSource();
            (IsRunning, Progress, Problem) = (true, (0, 1), null);
            var cancellation = stop.Token;
            _ = Task.Run(() => Make(make, cancellation), CancellationToken.None);
        }

        Changed?.Invoke();
    }

    /// <summary>Stops it; nothing is left of it.</summary>
    public void Stop() => stop.Cancel();

    /// <inheritdoc/>
    public void Dispose()
    {
        stop.Cancel();
        stop.Dispose();
    }

    private void Make(Action<string, Action<int, int>, CancellationToken> make, CancellationToken cancellation)
    {
        // A second demonstration does not touch the first.
        var folder = Enumerable.Range(1, int.MaxValue)
            .Select(number => Path.Combine(options.Folder, number == 1 ? Name : FormattableString.Invariant($"{Name}-{number}")))
            .First(path => !Path.Exists(path));
        try
        {
            make(folder, Show, cancellation);
        }
        catch (OperationCanceledException)
        {
            Remove(folder);
        }
        catch (Exception problem) when (problem is StudyException or IOException or UnauthorizedAccessException)
        {
            Problem = problem;
            Remove(folder);
        }
        finally
        {
            IsRunning = false;
            Changed?.Invoke();
        }
    }

    private static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // It stays on the shelf as far as it was made.
        }
    }

    private void Show(int done, int total)
    {
        Progress = (done, total);
        Changed?.Invoke();
    }
}
