namespace Tarry.Imports.PacketCapture.Files;

/// <summary>An interface of a pcapng section.</summary>
/// <param name="Number">Its number in the file, over all sections.</param>
/// <param name="LinkType">The link type of its packets.</param>
/// <param name="SnapLength">The longest that a packet was captured; 0 for no limit.</param>
/// <param name="Scale">Its clock.</param>
internal sealed record PcapNgInterface(int Number, int LinkType, uint SnapLength, TimestampScale Scale);
