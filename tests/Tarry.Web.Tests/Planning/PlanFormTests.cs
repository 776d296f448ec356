using Tarry.Findings.Plans;
using Tarry.Web.Planning;

namespace Tarry.Web.Tests.Planning;

public class PlanFormTests
{
    [Fact]
    public void Form_OfAnEmptyAddress_AsksForWhatTheCommandLineDoes()
    {
        var form = new PlanForm(new Dictionary<string, string>());
        Assert.Equal((PlanGoalKind.Difference, null, 0.8, PlanCosts.Default), (form.Request.Kind, form.Request.Ms, form.Request.Assurance, form.Request.Costs));
        Assert.Equal((null, null, 1u, "PORT", "light"), (form.Sittings, form.Trials, form.Seed, form.Port, form.Response));
        Assert.Empty(form.Problems);
    }

    [Theory]
    [InlineData("ms", "0")]
    [InlineData("ms", "-1")]
    [InlineData("ms", "1,5")]
    [InlineData("power", "0.4")]
    [InlineData("power", "1")]
    [InlineData("session-sd", "-0.1")]
    [InlineData("trial-sd", "NaN")]
    [InlineData("press-s", "0")]
    [InlineData("sittings", "1001")]
    [InlineData("sittings", "2.5")]
    [InlineData("trials", "0")]
    [InlineData("seed", "-1")]
    public void Form_OfAValueOutOfItsRange_SaysSoAndTakesTheUsual(string name, string value)
    {
        var form = new PlanForm(new Dictionary<string, string> { [name] = value });
        Assert.Equal(name, Assert.Single(form.Problems).Key);
        Assert.Equal(new PlanForm(new Dictionary<string, string>()).Request, form.Request);
    }

    [Fact]
    public void Form_OfAnAddressThatSaysEverything_TakesIt()
    {
        var form = new PlanForm(new Dictionary<string, string>
        {
            ["goal"] = "equivalence", ["ms"] = "0.25", ["power"] = "0.9", ["session-sd"] = "0", ["trial-sd"] = "1.5", ["sitting-min"] = "20", ["condition-min"] = "4", ["press-s"] = "0.1",
            ["sittings"] = "6", ["trials"] = "500", ["seed"] = "42", ["port"] = "/dev/ttyACM0", ["response"] = "echo", ["unknown"] = "x",
        });
        Assert.Equal((PlanGoalKind.Equivalence, 0.25, 0.9, 0d, 1.5), (form.Request.Kind, form.Request.Ms, form.Request.Assurance, form.Request.SessionSdMs, form.Request.TrialSdMs));
        Assert.Equal((new PlanCosts(20, 4, 0.1), 6, 500, 42u, "/dev/ttyACM0", "echo"), (form.Request.Costs, form.Sittings, form.Trials, form.Seed, form.Port, form.Response));
    }
}
