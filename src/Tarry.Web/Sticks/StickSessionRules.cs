using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Sticks;

/// <summary>What must hold before a stick is recorded.</summary>
internal static class StickSessionRules
{
    /// <summary>Refuses a session that cannot be recorded.</summary>
    /// <exception cref="StudyException">Its condition is not declared, it is there already, or a recording of it broke off.</exception>
    public static void Require(Study study, SessionKey key)
    {
        if (study.File.Conditions.All(condition => condition.Id != key.Condition))
        {
            throw new StudyException($"The condition {key.Condition} is not declared.", null, "Declare it on the page Set-up first.");
        }

        if (study.StickKeys.Contains(key))
        {
            throw new StudyException($"The session {key} is there already.", null, "Record into another sitting; what is sealed never changes.");
        }

        if (File.Exists(StickCapture.FileOf(study, key)))
        {
            throw new StudyException($"A recording of {key} that broke off is there.", null, "Seal what it holds, or remove it, above.");
        }
    }
}
