using Tarry.Rig;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Web.Sticks;

/// <summary>A recording that broke off: by the rig or by this computer, which its first line says.</summary>
internal static class BrokenOffStick
{
    /// <summary>Seals what it holds.</summary>
    /// <exception cref="RigException">It holds no reading of its procedure.</exception>
    public static StickSession Seal(Study study, StudyLock held, SessionKey key) =>
        RecordingHeader.Read(File.ReadLines(StickCapture.FileOf(study, key)).FirstOrDefault() ?? "") is not null
            ? HostStickWork.Seal(study, held, key)
            : new StickCapture(study, held, key).Seal() ?? throw new RigException($"The recording of {key} holds no reading of its procedure.", "Remove it, and record again.");
}
