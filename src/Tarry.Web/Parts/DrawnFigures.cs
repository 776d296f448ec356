using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

namespace Tarry.Web.Parts;

/// <summary>Figures that were drawn already: findings never change, so neither does what is drawn from them, whichever window shows it. They go when the findings go.</summary>
internal static class DrawnFigures
{
    private static readonly ConditionalWeakTable<object, ConcurrentDictionary<(object Draw, string Style), string>> Drawn = [];

    /// <summary>A drawing.</summary>
    /// <param name="of">What it is drawn from: the findings, or a part of them.</param>
    /// <param name="draw">What draws it.</param>
    /// <param name="style">In what style.</param>
    /// <param name="drawing">Draws it, where it is not there.</param>
    public static string Of(object of, object draw, string style, Func<string> drawing) =>
        Drawn.GetOrCreateValue(of).GetOrAdd((draw, style), _ => drawing());
}
