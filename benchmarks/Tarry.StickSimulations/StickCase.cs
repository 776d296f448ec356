using Tarry.Findings.Tests.Sticks;
using Tarry.Studies.Sticks;

namespace Tarry.StickSimulations;

/// <summary>A stick, how it is recorded in each sitting, and what should be found.</summary>
internal sealed record StickCase(string Name, FaultyStick Stick, Func<FaultyStick, ulong, string, StickSession[]> Record, params Truth[] Truths);
