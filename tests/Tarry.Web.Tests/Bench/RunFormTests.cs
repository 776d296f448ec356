using Tarry.Rig.Runs;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;
using Tarry.Web.Bench;

namespace Tarry.Web.Tests.Bench;

public class RunFormTests
{
    [Fact]
    public void Card_AsItComes_AsksForWhatTheRigDoesByDefault()
    {
        var card = Filled().Card("pads");
        Assert.Equal(RunRequest.DefaultSettings, card.Asked.Run);
        Assert.Equal(new SessionKey("monday", "quill-usb"), card.Key);
        Assert.Equal((1500, null, 128L), (card.Asked.Trials, card.Asked.HalfWidthMs, card.Asked.LightThreshold));
    }

    [Fact]
    public void Take_WhatARunWasAskedFor_GivesTheSameCardAgain()
    {
        var asked = new OpenRun
        {
            Port = "simulated",
            Speed = 20,
            Run = new RunSettings("echo", 71_000, 125_500, 21_000, 61_000, 11_000, 9) { Actuation = new Actuation("axis", new AxisActuation("dac", 10, 60_000, 30_000, 1_250)) },
            HalfWidthMs = 0.02,
            FallingEdge = true,
            LightThreshold = 90,
            AllowNarrowInterval = true,
            Echo = new OpenRunEcho("simulated", "BTN_SOUTH", null, false, true),
            Host = "a host",
            Application = "an application",
            FrameCapHz = 240,
            RefreshHz = 144,
            Battery = "half",
            RoomNotes = "dark",
        };
        var form = new RunForm();
        form.Take(BenchStudy.Key, asked);
        Assert.Equal(asked, form.Card("pads").Asked);
    }

    [Theory]
    [InlineData("sitting")]
    [InlineData("condition")]
    [InlineData("port")]
    [InlineData("trials")]
    [InlineData("hold")]
    [InlineData("echo")]
    public void Card_SomethingMissing_IsRefusedWithWhatToDo(string what)
    {
        var form = Filled();
        switch (what)
        {
            case "sitting": form.Sitting = "Monday morning"; break;
            case "condition": form.Condition = ""; break;
            case "port": form.Port = ""; break;
            case "trials": form.Trials = null; break;
            case "hold": form.HoldMs = null; break;
            default: (form.Response, form.Port) = ("echo", "/dev/ttyACM0"); break;
        }

        var error = Assert.Throws<RunSettingsException>(() => form.Card("pads"));
        Assert.NotEmpty(error.Remedy);
    }

    [Fact]
    public void Card_OtherTarget_IsTheOnlyOne()
    {
        var form = Filled();
        form.Target = RunTargetKind.HalfWidth;
        Assert.Equal((null, 0.05), (form.Card("pads").Asked.Trials, form.Card("pads").Asked.HalfWidthMs));
        form.Target = RunTargetKind.ByHand;
        Assert.Equal((null, null), (form.Card("pads").Asked.Trials, form.Card("pads").Asked.HalfWidthMs));
    }

    private static RunForm Filled() => new() { Sitting = "monday", Condition = "quill-usb", Port = "simulated" };
}
