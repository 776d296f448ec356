using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Tarry.Demo;
using Tarry.Output;
using Tarry.Web.Hosting;

namespace Tarry.Commands;

/// <summary><c>tarry serve</c>: the web app on this machine.</summary>
internal static class ServeCommand
{
    private const int UsualPort = 4680;
    private const uint DemonstrationSeed = 1;
    private const int GreatestPort = 65_535;

    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER") { Description = "Folder that holds your studies; the current one if not given.", DefaultValueFactory = _ => "." };
        var port = new Option<int>("--port") { Description = "Port on the loopback address; 0 for any that is free.", DefaultValueFactory = _ => UsualPort };
        port.Validators.Add(result =>
        {
            if (result.Tokens is [var given] && !(int.TryParse(given.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= GreatestPort))
            {
                result.AddError($"--port must be from 0 to {GreatestPort}.");
            }
        });
        var noOpen = new Option<bool>("--no-open") { Description = "Does not open the browser." };
        var command = new Command(
            "serve",
            "Opens the bench in the browser: capture, findings, comparisons, reports. Only this machine can reach it. Ctrl-C ends it;\n"
            + "a run that is under way is stopped first and loses nothing.\n\nExample: tarry serve studies")
        {
            folder, port, noOpen,
        };
        command.SetAction((parsed, cancellation) => Serve(
            new ServeOptions(parsed.GetRequiredValue(folder), parsed.GetValue(port), ProgramVersion.Text)
            {
                MakeDemonstration = (made, show, stop) => new DemoStudy(made, DemonstrationSeed).Capture((done, total, _) => show(done, total), stop),
            },
            !parsed.GetValue(noOpen),
            terminal,
            cancellation));
        return command;
    }

    private static async Task<int> Serve(ServeOptions options, bool opens, Terminal terminal, CancellationToken cancellation)
    {
        if (!Directory.Exists(options.Folder))
        {
            throw new UsageException($"There is no folder {options.Folder}.", "Name the folder that holds your studies, or make it first.");
        }

        await using var app = WebBench.Build(options);
        try
        {
            await app.StartAsync(cancellation);
        }
        catch (IOException exception) when (exception.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            throw new UsageException($"Port {options.Port} is taken by another program.", "Give another with --port, or --port 0 for any that is free.");
        }

        var address = app.Urls.First();
        terminal.Out.WriteLine(address);
        terminal.Error.WriteLine("Ctrl-C ends it.");
        if (opens)
        {
            Open(address);
        }

        await app.WaitForShutdownAsync(cancellation);
        return ExitCode.Done;
    }

    private static void Open(string address)
    {
        try
        {
            using var browser = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Exception exception) when (exception is System.ComponentModel.Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            // No browser to open; the address is on the terminal.
        }
    }
}
