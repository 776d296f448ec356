using Tarry.Rig.Runs;
using Tarry.Studies.Sticks;
using Tarry.Web.Sticks;

namespace Tarry.Web.Tests.Sticks;

public class StickFormTests
{
    public static TheoryData<string, Action<StickForm>> Wrong => new()
    {
        { "No condition is chosen", form => form.Condition = "" },
        { "The sitting needs a name", form => form.Sitting = "Monday evening" },
        { "Nothing is chosen that reads", form => form.Source = "" },
        { "time to get ready", form => form.ReadySeconds = -1 },
        { "time to get ready", form => form.ReadySeconds = null },
        { "between readings", form => form.IntervalUs = 500 },
        { "17 to 660 s", form => form.Seconds = 5 },
        { "An uncertainty", form => form.StimulusUncertainty = -1 },
        { "do not say where the stick stood in truth", form => (form.Source, form.Procedure) = ("device:/dev/input/event7", StickProcedure.AngleStops) },
    };

    [Fact]
    public void Card_OfTheRig_AsksForWhatIsFilledIn()
    {
        var form = Filled();
        (form.Seconds, form.ReadySeconds, form.IntervalUs, form.AgainstSupply, form.YIsDown, form.StimulusUncertainty) = (100, 3, 2_000, true, true, 1.4);
        var card = form.Card("pads");
        Assert.Equal(("pads", "monday.quill-stick.rim-sweep", "/dev/ttyACM0", false), (card.Study, card.Key.ToString(), card.Source, card.IsOfDevice));
        Assert.Null(card.Speed);
        Assert.Equal((100, 3, 2_000u, true, true), (card.Request.Seconds!.Value, card.Request.ReadySeconds, card.Request.IntervalUs, card.Request.AgainstSupply, card.Request.YIsDown));
        // A rim sweep knows no true position.
        Assert.Null(card.Request.StimulusUncertainty);
    }

    [Fact]
    public void Card_OfADevice_HasItsPath()
    {
        var form = Filled();
        form.Source = StickForm.DeviceMark + "/dev/input/event7";
        var card = form.Card("pads");
        Assert.Equal(("/dev/input/event7", true, false), (card.Source, card.IsOfDevice, card.IsSimulated));
    }

    [Fact]
    public void Card_OfTheSimulatedStick_HasItsPace()
    {
        var form = Filled();
        (form.Source, form.Speed) = ("simulated", 20);
        Assert.Equal((true, 20), (form.Card("pads").IsSimulated, form.Card("pads").Speed!.Value));
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Card_OfWhatCannotBe_IsRefused(string why, Action<StickForm> fill)
    {
        ArgumentNullException.ThrowIfNull(fill);
        var form = Filled();
        fill(form);
        Assert.Contains(why, Assert.Throws<RunSettingsException>(() => form.Card("pads")).Message, StringComparison.Ordinal);
    }

    private static StickForm Filled() => new() { Condition = "quill-stick", Sitting = "monday", Procedure = StickProcedure.RimSweep, Source = "/dev/ttyACM0" };
}
