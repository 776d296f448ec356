using System.Buffers.Text;
using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.ValueChangeDump;

/// <summary>Reads the changes of a dump and tells the levels of the selected channels, one time step after another.</summary>
internal sealed class ChangeReader(TokenScanner tokens, IReadOnlyList<ChannelSelection> channels)
{
    /// <summary>Told the time of a step, in units of the dump, and the levels from then on.</summary>
    public delegate void StepHandler(long time, ReadOnlySpan<SignalLevel> levels);

    private const int TokensBetweenReports = 1 << 20;
    private readonly SignalLevel[] levels = new SignalLevel[channels.Count];
    private readonly byte[][] identifiers = [.. channels.Select(channel => channel.Identifier)];
    private readonly bool[] isFirst = [.. Enumerable.Range(0, 256).Select(letter => channels.Any(channel => channel.Identifier[0] == letter))];
    private bool changed;

    /// <summary>The time that was told last, in units of the dump.</summary>
    public long Time { get; private set; }

    /// <summary>How often dumping was switched off.</summary>
    public long Suspensions { get; private set; }

    /// <summary>Reads to the end.</summary>
    /// <remarks>What changes twice within one time step has changed once: to what it is at the end of the step.</remarks>
    /// <exception cref="DamagedRecordingException">The file stops making sense; steps before were told.</exception>
    public void Read(StepHandler step, Action<long> progress)
    {
        for (var count = 1L; tokens.Next(out var token); count++)
        {
            // Apart, since nearly all are these two: the processor guesses a choice of two better than one of many.
            if (token[0] is (byte)'0' or (byte)'1')
            {
                TakeScalar(token);
            }
            else
            {
                Take(token, step);
            }

            if (count % TokensBetweenReports == 0)
            {
                progress(count);
            }
        }

        Tell(step);
    }

    private void Take(ReadOnlySpan<byte> token, StepHandler step)
    {
        switch (token[0])
        {
            case (byte)'#':
                Advance(token, step);
                break;
            case (byte)'x' or (byte)'X' or (byte)'z' or (byte)'Z'
                or (byte)'h' or (byte)'H' or (byte)'l' or (byte)'L' or (byte)'u' or (byte)'U' or (byte)'w' or (byte)'W' or (byte)'-':
                TakeScalar(token);
                break;
            case (byte)'b' or (byte)'B' or (byte)'r' or (byte)'R':
                TakeLong(token);
                break;
            case (byte)'s' or (byte)'S':
                RequireIdentifier();
                break;
            case (byte)'$':
                TakeKeyword(token);
                break;
            default:
                throw Damaged(token[0] is >= 32 and < 127
                    ? $"'{Shown(token)}' is neither a time nor a change of a value."
                    : $"The byte 0x{token[0]:x2} is no text.");
        }
    }

    private void Advance(ReadOnlySpan<byte> token, StepHandler step)
    {
        if (!Utf8Parser.TryParse(token[1..], out ulong time, out var used) || used != token.Length - 1 || time > long.MaxValue / 128)
        {
            throw Damaged($"'{Shown(token)}' is no time.");
        }

        if ((long)time < Time)
        {
            throw Damaged(tokens.AtEnd ? $"The file ends within the time '{Shown(token)}'." : $"The time goes back from {Time} to {time}.");
        }

        Tell(step);
        Time = (long)time;
    }

    private void Tell(StepHandler step)
    {
        if (changed)
        {
            step(Time, levels);
            changed = false;
        }
    }

    private void TakeScalar(ReadOnlySpan<byte> token)
    {
        if (token.Length == 1)
        {
            throw Damaged($"The change '{Shown(token)}' does not say of which channel.");
        }

        // The first letter tells nearly all others apart.
        if (!isFirst[token[1]])
        {
            return;
        }

        var identifier = token[1..];
        for (var index = 0; index < identifiers.Length; index++)
        {
            if (identifier.SequenceEqual(identifiers[index]))
            {
                levels[index] = ChannelSelection.LevelOf(token[0]);
                changed = true;
            }
        }
    }

    private void TakeLong(ReadOnlySpan<byte> token)
    {
        Span<SignalLevel> found = stackalloc SignalLevel[identifiers.Length];
        var isReal = token[0] is (byte)'r' or (byte)'R';
        var value = double.NaN;
        if (isReal && (!Utf8Parser.TryParse(token[1..], out value, out var used) || used != token.Length - 1))
        {
            // %g prints nan and inf; what is no number has no level.
            value = double.NaN;
        }

        for (var index = 0; index < found.Length; index++)
        {
            found[index] = !isReal ? channels[index].LevelOfVector(token[1..])
                : double.IsNaN(value) ? SignalLevel.Unknown
                : value >= channels[index].Threshold ? SignalLevel.High : SignalLevel.Low;
        }

        var identifier = RequireIdentifier();
        for (var index = 0; index < found.Length; index++)
        {
            if (identifier.SequenceEqual(identifiers[index]))
            {
                levels[index] = found[index];
                changed = true;
            }
        }
    }

    private ReadOnlySpan<byte> RequireIdentifier() =>
        tokens.Next(out var identifier) ? identifier : throw Damaged("The file ends within a change.");

    private void TakeKeyword(ReadOnlySpan<byte> token)
    {
        if (token.SequenceEqual("$comment"u8))
        {
            while (tokens.Next(out var word))
            {
                if (word.SequenceEqual("$end"u8))
                {
                    return;
                }
            }

            throw Damaged("The file ends within a comment.");
        }

        if (token.SequenceEqual("$dumpoff"u8))
        {
            Suspensions++;
            Array.Fill(levels, SignalLevel.Unknown);
            changed = true;
        }
        else if (!(token.SequenceEqual("$end"u8) || token.SequenceEqual("$dumpvars"u8) || token.SequenceEqual("$dumpall"u8) || token.SequenceEqual("$dumpon"u8)))
        {
            throw Damaged($"'{Shown(token)}' has no place among the changes.");
        }
    }

    private DamagedRecordingException Damaged(string problem) => new(tokens.Offset, problem);

    private static string Shown(ReadOnlySpan<byte> token) =>
        string.Concat(System.Text.Encoding.Latin1.GetString(token[..Math.Min(token.Length, 40)]).Select(letter => char.IsControl(letter) ? '?' : letter));
}
