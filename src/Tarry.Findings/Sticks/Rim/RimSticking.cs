using Tarry.Findings.Sticks.Faults;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>Tells an axial dead zone from a radial one: turns along the gate stick to an axis that has one where they cross it.</summary>
internal static class RimSticking
{
    private const double Sticks = 3;
    private const double LeastShare = 0.004;
    private const double Width = 0.25;
    private const double Beside = 30;

    public static DeadZoneForm Form(StickCondition condition, IReadOnlyList<StickFault> faults)
    {
        var turns = condition.Recordings.Where(recording => recording.Setup.Procedure == StickProcedure.RimSweep).ToList();
        return !faults.Any(fault => fault.Kind == StickFaultKind.DeadZone) || turns.Count == 0 || condition.Rims.Count == 0
            ? DeadZoneForm.NotTold
            : turns.Any(recording => IsStuck(recording.X, recording) || IsStuck(recording.Y, recording)) ? DeadZoneForm.Axial : DeadZoneForm.Radial;
    }

    // Positions at the very middle, beside those that a steady turn would leave there by what lies to its sides.
    private static bool IsStuck(AxisRecording axis, StickRecording recording)
    {
        var width = Math.Max(Width, 0.75 * axis.Step);
        var (near, beside, all) = (0, 0, 0);
        for (var i = 0; i < recording.Count; i++)
        {
            if (recording.Radius(i) > 50)
            {
                var distance = Math.Abs(axis.Percent[i]);
                near += distance <= width ? 1 : 0;
                beside += distance > width && distance <= Beside ? 1 : 0;
                all++;
            }
        }

        return near > LeastShare * all && near > Sticks * beside * width / (Beside - width);
    }
}
