using System.Globalization;
using Tarry.Rig.Frames;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies.Calibrations;

namespace Tarry.Rig.Proofs;

/// <summary>
/// Finds the light thresholds that answer. The firmware reports no level of the light; but below the level when dark the line
/// is active before the press, and above the level when bright nothing answers, so the two ends are the two levels.
/// </summary>
internal sealed class ThresholdScan(RigLink link, TimeProvider time, RunRequest request)
{
    private const int Lowest = 1;
    private const int Highest = 254;
    private const int Step = 11;
    private const int PressesEach = 3;
    private const int Attempts = 3;
    private static readonly TimeSpan RunLimit = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan BusyLimit = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(100);

    /// <summary>The range, to 1/256; null if no threshold that was tried answers.</summary>
    public ThresholdRange? Find(CancellationToken cancellation)
    {
        Send(HostCommand.Stop, cancellation);
        foreach (var (parameter, value) in RunParameters.Values(request, 0, 1, PressesEach))
        {
            Send(HostCommand.Set(parameter, (uint)value), cancellation);
        }

        var answering = Enumerable.Range(0, ((Highest - Lowest) / Step) + 1)
            .Select(index => Lowest + (index * Step))
            .Where(threshold => Answers(threshold, cancellation))
            .ToList();
        return answering.Count == 0 ? null : new ThresholdRange(
            Boundary(answering[0], answering[0] - Step, cancellation),
            Boundary(answering[^1], answering[^1] + Step, cancellation));
    }

    /// <summary>The last that answers on the way from one that does to one that does not or is out of range.</summary>
    private int Boundary(int answers, int fails, CancellationToken cancellation)
    {
        while (Math.Abs(fails - answers) > 1)
        {
            var middle = (answers + fails) / 2;
            if (middle is >= Lowest and <= Highest && Answers(middle, cancellation))
            {
                answers = middle;
            }
            else
            {
                fails = middle;
            }
        }

        return answers;
    }

    private bool Answers(int threshold, CancellationToken cancellation)
    {
        Send(HostCommand.Set(RigParameter.Threshold, (uint)threshold), cancellation);
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            Send(HostCommand.Go, cancellation);
            var start = time.GetTimestamp();
            while (link.State == LinkState.Alive && time.GetElapsedTime(start) < RunLimit)
            {
                if (link.Next(Moment) is RunEndFrame end)
                {
                    return end.Responses == PressesEach;
                }
            }
        }

        throw new RigException(
            string.Create(CultureInfo.InvariantCulture, $"The rig did not finish {PressesEach} presses at threshold {threshold}."),
            "Check the cable, and that nothing else has the port open.");
    }

    private void Send(HostCommand command, CancellationToken cancellation)
    {
        var start = time.GetTimestamp();
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            switch (link.Ask(command))
            {
                case AckFrame:
                    return;
                case RefusalFrame { Reason: RefusalReason.State } when time.GetElapsedTime(start) < BusyLimit:
                    link.Next(Moment);
                    break;
                case RefusalFrame refusal:
                    throw new RigException($"The rig refuses '{command.Kind}{command.Fields}': {refusal.Reason}.", "Put the firmware that came with this program on the board.");
                default:
                    throw new RigException("The rig no longer answers.", "Check the cable, and that nothing else has the port open.");
            }
        }
    }
}
