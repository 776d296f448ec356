using System.Diagnostics;

namespace Tarry.Tests.Emulator;

/// <summary>The firmware and the emulator, built once from source; tests skip where the tools are missing.</summary>
public sealed class EmulatorBuild
{
    private static readonly Lazy<string?> Failure = new(Make);

    /// <summary>The emulator's path.</summary>
    public static string Program => Path.Combine(Repository.Root, "emulator", "build", "tarry-emulator");

    /// <summary>The firmware for a board.</summary>
    public static string Firmware(string board) => Path.Combine(Repository.Root, "firmware", "build", board, "tarry_rig.elf");

    /// <summary>Needs the tools, and builds.</summary>
    public static void Require()
    {
        Requirement.Needs(OperatingSystem.IsLinux(), "Linux pseudo-terminals");
        Requirement.Program("make", "make");
        Requirement.Program("avr-gcc", "gcc-avr");
        Requirement.Needs(File.Exists("/usr/include/simavr/sim_avr.h"), "simavr's headers (Debian packages libsimavr-dev, libelf-dev)");
        Assert.True(Failure.Value is null, Failure.Value);
    }

    private static string? Make()
    {
        foreach (var folder in new[] { "firmware", "emulator" })
        {
            using var make = Process.Start(new ProcessStartInfo("make", ["-s", "-C", Path.Combine(Repository.Root, folder)])
            {
                RedirectStandardError = true,
                RedirectStandardOutput = true,
            })!;
            var error = make.StandardError.ReadToEndAsync();
            make.StandardOutput.ReadToEnd();
            make.WaitForExit();
            if (make.ExitCode != 0)
            {
                return $"make -C {folder} failed: {error.Result}";
            }
        }

        return null;
    }
}
