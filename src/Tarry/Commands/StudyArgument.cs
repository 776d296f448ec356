using System.CommandLine;

namespace Tarry.Commands;

/// <summary>The study's folder, first argument of most commands.</summary>
internal static class StudyArgument
{
    public static Argument<string> Create() => new Argument<string>("STUDY") { Description = "The study's folder." }.MustNotBeEmpty();
}
