namespace Tarry.Reports.Wording;

/// <summary>The care that work at the bench asks for, in the same words wherever it is done.</summary>
public static class BenchCare
{
    private const string Flashing = "A flashing target can trigger photosensitive epilepsy: keep the patch small, and keep others from watching it.";

    /// <summary>One sentence a hazard.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "Lithium cells burn when pierced, shorted or overheated: disconnect the cell before you open or solder, and leave a swollen one alone.",
        "Soldering: ventilate, wear eye protection, mind the iron; discharge yourself before you touch a board.",
        "5 V on a 3.3 V pad can destroy a device: isolate the contact with an optocoupler, and find its polarity first.",
        Flashing,
        "Follow your local rules, and ask a qualified person where you are not sure.",
    ];

    /// <summary>Those of work at which nothing flashes.</summary>
    public static IReadOnlyList<string> WithoutFlashing { get; } = [.. Sentences.Where(sentence => sentence != Flashing)];
}
