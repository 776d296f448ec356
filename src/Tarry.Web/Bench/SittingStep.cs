using Tarry.Imports.Orders;

namespace Tarry.Web.Bench;

/// <summary>One step of a sitting.</summary>
/// <param name="Run">What the order says.</param>
/// <param name="State">Whether it is done.</param>
public sealed record SittingStep(OrderedStep Run, SittingStepState State);
