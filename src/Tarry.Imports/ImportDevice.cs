namespace Tarry.Imports;

/// <summary>A device of a packet capture, as the options of an import name it.</summary>
/// <param name="Id">Its name in the capture.</param>
/// <param name="ProductId">USB vendor and product id; null where the capture does not hold them.</param>
/// <param name="Reports">How many reports came from it.</param>
/// <param name="Fields">The fields of its reports; none where the capture holds no report descriptor of it.</param>
public sealed record ImportDevice(string Id, string? ProductId, int Reports, IReadOnlyList<string> Fields);
