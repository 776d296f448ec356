namespace Tarry.Rig.Frames;

/// <summary>A checked message from the rig.</summary>
/// <param name="Boot">The rig's boot counter: another value means that the rig restarted.</param>
public abstract record RigFrame(ushort Boot);
