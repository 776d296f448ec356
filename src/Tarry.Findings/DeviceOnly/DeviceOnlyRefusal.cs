namespace Tarry.Findings.DeviceOnly;

/// <summary>Why the device alone cannot be told from the chain: the kind and its numbers. Worded by <see cref="DeviceOnlyWording"/>.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Numbers">Its numbers by name, with the unit in the name.</param>
public sealed record DeviceOnlyRefusal(DeviceOnlyRefusalKind Kind, IReadOnlyDictionary<string, double> Numbers);
