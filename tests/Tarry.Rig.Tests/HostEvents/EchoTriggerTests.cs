using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;

namespace Tarry.Rig.Tests.HostEvents;

public class EchoTriggerTests
{
    private static readonly HostInputDescription Pad = new() { Path = "pad", Name = "Pad", Buttons = [0x130, 0x131], Axes = [new InputAxis(2, 0, 255, 0, 0, 0)] };
    private static readonly HostInputDescription Keyboard = new() { Path = "keys", Name = "Keys", Buttons = [30, 57], IsTextKeyboard = true };
    private static readonly HostInputDescription Raw = new() { Path = "raw", Name = "Raw" };

    [Fact]
    public void Sees_OfAnyButton_GoingDown_IsThePress()
    {
        var trigger = EchoTrigger.Of(Pad, null, null, false);
        Assert.True(Sees(trigger, new InputEvent(1, 0x131, 1)));
        Assert.False(Sees(trigger, new InputEvent(1, 0x131, 0)));
        Assert.False(Sees(trigger, new InputEvent(3, 2, 1)));
    }

    [Fact]
    public void Sees_OfOneButton_IsItsPressAndNoOthersNorItsRepetition()
    {
        var trigger = EchoTrigger.Of(Pad, "BTN_SOUTH", null, false);
        Assert.False(Sees(trigger, new InputEvent(1, 0x131, 1)));
        Assert.True(Sees(trigger, new InputEvent(1, 0x130, 1)));
        Assert.False(Sees(trigger, new InputEvent(1, 0x130, 2)));
        Assert.False(Sees(trigger, new InputEvent(1, 0x130, 0)));
        Assert.True(Sees(trigger, new InputEvent(1, 0x130, 1)));
    }

    [Fact]
    public void Sees_OfAnAxis_IsTheCrossingOfItsLevel()
    {
        var rising = EchoTrigger.Of(Pad, "ABS_Z", 128, false);
        Assert.Equal([false, true, false, false, true], new[] { 127, 128, 255, 0, 200 }.Select(value => Sees(rising, new InputEvent(3, 2, value))));
        var falling = EchoTrigger.Of(Pad, "ABS_Z", 128, true);
        Assert.Equal([false, true, false, false], new[] { 129, 128, 0, 255 }.Select(value => Sees(falling, new InputEvent(3, 2, value))));
    }

    [Fact]
    public void Sees_OfABit_IsItsRisingInTheRawReport()
    {
        var trigger = EchoTrigger.Of(Raw, "bit:9", null, false);
        Assert.Equal([false, true, false, false, true], new byte[] { 0xfd, 0x02, 0x02, 0x00, 0xff }.Select(value => trigger.Sees(new InputReport { StampNanoseconds = 0, Bytes = [1, value] })));
        Assert.False(trigger.Sees(new InputReport { StampNanoseconds = 0, Bytes = [1] }));
    }

    [Fact]
    public void Sees_OfAPressAfterALoss_IsCountedAndNotEchoed()
    {
        var trigger = EchoTrigger.Of(Pad, "BTN_SOUTH", null, false);
        Assert.False(trigger.Sees(new InputReport { StampNanoseconds = 0, Events = [new InputEvent(1, 0x130, 1)], FollowsALoss = true }));
        Assert.Equal(1, trigger.LostPresses);
        Assert.False(Sees(trigger, new InputEvent(1, 0x130, 1)));
        Assert.False(Sees(trigger, new InputEvent(1, 0x130, 0)));
        Assert.True(Sees(trigger, new InputEvent(1, 0x130, 1)));
    }

    [Theory]
    [InlineData("BTN_TL", null)]
    [InlineData("ABS_Z", null)]
    [InlineData("ABS_X", 3)]
    [InlineData("REL_X", null)]
    [InlineData("bit:x", null)]
    [InlineData("bit:999999999", null)]
    [InlineData("nonsense", null)]
    public void Of_WhatTheDeviceHasNot_SaysWhatToDo(string asked, int? level) =>
        Assert.NotEmpty(Assert.Throws<HostInputException>(() => EchoTrigger.Of(Pad, asked, level, false)).Remedy);

    [Fact]
    public void Of_AKeyboardWithoutAKey_AsksForOne()
    {
        Assert.Throws<HostInputException>(() => EchoTrigger.Of(Keyboard, null, null, false));
        Assert.True(Sees(EchoTrigger.Of(Keyboard, "KEY_SPACE", null, false), new InputEvent(1, 57, 1)));
    }

    private static bool Sees(EchoTrigger trigger, InputEvent change) => trigger.Sees(new InputReport { StampNanoseconds = 0, Events = [change] });
}
