using System.Globalization;
using System.Text;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.ValueChangeDump;

/// <summary>One channel of a dump as the user named it: a variable, or one bit of it.</summary>
/// <param name="Net">The variable.</param>
/// <param name="Place">The bit, from the right.</param>
/// <param name="Threshold">From which value on a real number counts as high.</param>
internal sealed record ChannelSelection(DumpNet Net, int Place, double Threshold)
{
    /// <summary>The variable's code in the changes.</summary>
    public byte[] Identifier { get; } = Encoding.UTF8.GetBytes(Net.Identifier);

    /// <summary>Finds a channel by path, name or identifier, with <c>[bit]</c> behind it where it is one bit of a vector.</summary>
    /// <exception cref="ImportException">There is none, or several could be meant, or it has more bits than one.</exception>
    public static ChannelSelection Find(IReadOnlyList<DumpNet> nets, string? wanted, double? threshold, string option, string place)
    {
        if (wanted is null)
        {
            throw new ImportException($"{option} is missing; the file has {Listed(nets)}.", place, $"Give {option} with the name, path or identifier of one of them.");
        }

        var (net, index) = (Match(nets, wanted, option, place), default(int?));
        var bracket = wanted.EndsWith(']') ? wanted.LastIndexOf('[') : -1;
        if (net is null && bracket > 0 && int.TryParse(wanted[(bracket + 1)..^1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var bit))
        {
            (net, index) = (Match(nets, wanted[..bracket].TrimEnd(), option, place), bit);
        }

        if (net is null)
        {
            throw new ImportException(
                $"There is no channel '{wanted}'; the file has {Listed(nets)}.",
                place,
                $"Give {option} with the name, path or identifier of one of them.");
        }

        if (net.IsReal && threshold is null)
        {
            throw new ImportException($"The channel {net.Path} holds real numbers.", place, $"Say from which value on it is high: {option.Replace("-channel", "-threshold", StringComparison.Ordinal)} NUMBER.");
        }

        if (!net.IsReal && index is null && net.Width > 1)
        {
            throw new ImportException($"The channel {net.Path} has {net.Width} bits.", place, $"Name one of them: {option} '{net.Name}[{net.Right}]'.");
        }

        return net.PlaceOf(index ?? net.Right) is { } fromRight
            ? new ChannelSelection(net, fromRight, threshold ?? 0)
            : throw new ImportException($"The channel {net.Path} has the bits {net.Left} to {net.Right}, and no {index}.", place, $"Name one of them with {option}.");
    }

    /// <summary>The level that a value of the variable gives; vectors are extended to the left.</summary>
    public SignalLevel LevelOfVector(ReadOnlySpan<byte> bits)
    {
        if (bits.IsEmpty)
        {
            return SignalLevel.Unknown;
        }

        // IEEE 1364: extended with 0, but with x or z where the leftmost digit is that.
        var digit = Place < bits.Length ? bits[bits.Length - 1 - Place] : bits[0] is (byte)'1' ? (byte)'0' : bits[0];
        return LevelOf(digit);
    }

    /// <summary>The level that a digit means; the nine values of VHDL dumps among them.</summary>
    public static SignalLevel LevelOf(byte digit) => digit switch
    {
        (byte)'0' or (byte)'l' or (byte)'L' => SignalLevel.Low,
        (byte)'1' or (byte)'h' or (byte)'H' => SignalLevel.High,
        _ => SignalLevel.Unknown,
    };

    private static string Listed(IReadOnlyList<DumpNet> nets) =>
        nets.Count == 0 ? "no channel at all" : string.Join(", ", nets.Take(20).Select(known => known.Path)) + (nets.Count > 20 ? " and more" : "");

    private static DumpNet? Match(IReadOnlyList<DumpNet> nets, string wanted, string option, string place)
    {
        foreach (var property in new Func<DumpNet, string>[] { net => net.Path, net => net.Name, net => net.Identifier })
        {
            var found = nets.Where(net => property(net) == wanted).DistinctBy(net => net.Identifier).Take(2).ToList();
            if (found.Count == 2)
            {
                throw new ImportException($"'{wanted}' is {found[0].Path} and {found[1].Path}.", place, $"Give {option} with the whole path of one of them.");
            }

            if (found.Count == 1)
            {
                return found[0];
            }
        }

        return null;
    }
}
