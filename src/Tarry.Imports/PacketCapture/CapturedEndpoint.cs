using Tarry.Studies.Reports;

namespace Tarry.Imports.PacketCapture;

/// <summary>Where reports of a captured device come from.</summary>
/// <param name="Endpoint">What is declared of it.</param>
/// <param name="Descriptor">The HID report descriptor; null where the capture does not hold it.</param>
/// <param name="Notes">What the user should know of how its packets were taken.</param>
public sealed record CapturedEndpoint(ReportEndpoint Endpoint, byte[]? Descriptor, IReadOnlyList<string> Notes);
