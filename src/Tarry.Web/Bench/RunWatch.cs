using Tarry.Findings.Quality;
using Tarry.Findings.Samples;
using Tarry.Rig.Runs;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Bench;

/// <summary>Looks now and then at what a run has captured, beside the capture and never in its way.</summary>
/// <remarks>What a look costs grows with the session, so the time between looks does too: at most 2 % of one core.</remarks>
internal sealed class RunWatch(Study study, SessionKey key, TimeProvider time)
{
    private const int FewestNew = 20;
    private const int RestPerLook = 50;
    private static readonly TimeSpan Shortest = TimeSpan.FromSeconds(5);
    private readonly double? reportHz = study.File.Conditions.FirstOrDefault(condition => condition.Id == key.Condition)?.NominalReportHz;
    private long next = time.GetTimestamp();
    private int looking;

    /// <summary>What the newest look found, and of how many trials.</summary>
    public (IReadOnlyList<Caution> Cautions, long Trials) Found { get; private set; } = ([], 0);

    /// <summary>The counts of the reference condition's latencies; empty while they are not known, there are none, or the run is the reference's.</summary>
    public IReadOnlyList<(long Step, long Count)> Reference { get; private set; } = [];

    /// <summary>Looks at the reference condition, on another thread.</summary>
    public void LookAtReference()
    {
        if (study.File.Reference is not { } reference || reference == key.Condition)
        {
            return;
        }

        _ = Task.Run(() =>
        {
            try
            {
                var counts = new LatencyCounts();
                foreach (var latencyMs in UsedLatencies.Of(study, reference))
                {
                    counts.Add(latencyMs);
                }

                Reference = counts.InOrder();
            }
            catch (StudyException)
            {
                // The study's pages say what is wrong with it; the run needs no reference.
            }
        });
    }

    /// <summary>Looks, on another thread, if it is time and there is something new.</summary>
    public void LookIfDue(long captured)
    {
        if (time.GetTimestamp() < Volatile.Read(ref next) || captured < Found.Trials + FewestNew || Interlocked.Exchange(ref looking, 1) == 1)
        {
            return;
        }

        _ = Task.Run(Look);
    }

    private void Look()
    {
        var begun = time.GetTimestamp();
        try
        {
            var session = study.Read(key);
            Found = (RunCautions.Of(session, reportHz), session.Trials.Count);
        }
        catch (Exception exception) when (exception is StudyException or IOException)
        {
            // Sealed or stopped at this moment: the end is told elsewhere.
        }
        finally
        {
            var rest = RestPerLook * time.GetElapsedTime(begun);
            Volatile.Write(ref next, time.GetTimestamp() + (long)((rest > Shortest ? rest : Shortest).TotalSeconds * time.TimestampFrequency));
            Interlocked.Exchange(ref looking, 0);
        }
    }
}
