using System.Globalization;
using System.Runtime.CompilerServices;

namespace Tarry.Tests;

/// <summary>
/// What a test needs from the machine beyond the SDK. Where it is missing the test skips with the reason;
/// where <c>TARRY_FORBID_SKIP=1</c> is set (continuous integration) it fails instead.
/// </summary>
internal static class Requirement
{
    [ModuleInitializer]
    internal static void PinTheInvariantCulture() =>
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;

    /// <summary>Goes on when <paramref name="present"/>, else skips, or fails where skipping is forbidden.</summary>
    public static void Needs(bool present, string what)
    {
        if (present)
        {
            return;
        }

        if (Environment.GetEnvironmentVariable("TARRY_FORBID_SKIP") == "1")
        {
            Assert.Fail($"Skipping is forbidden here, and this test needs {what}.");
        }

        Assert.Skip($"needs {what}");
    }

    /// <summary>Needs a program on the search path, such as <c>Rscript</c>.</summary>
    public static string Program(string name, string debianPackage)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var found = folders.Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);
        Needs(found is not null, $"the program {name} (Debian package {debianPackage})");
        return found!;
    }
}
