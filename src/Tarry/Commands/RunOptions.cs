using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Tarry.Rig.Runs;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary>The options that say how a run presses, when it has enough, and what the bench is like.</summary>
internal sealed class RunOptions
{
    private static readonly RunSettings Defaults = RunRequest.DefaultSettings;

    private readonly Option<string> response = new("--response") { Description = "What answers: light sensor, logic edge, or an echo byte from the host.", DefaultValueFactory = _ => Defaults.Response };
    private readonly Option<long?> trials = new("--trials") { Description = "Stop after this many trials." };
    private readonly Option<double?> halfWidth = new Option<double?>("--half-width-ms") { Description = "Stop when the mean is known to this half-width, within this session; never before 200 trials." }.TakesNumber(positive: true);
    private readonly Option<(long Min, long Max)?> interval = new("--interval-ms")
    {
        Description = $"Time from press to press, MIN..MAX, drawn anew for each press; at least 50 ms apart. [default: {Shown(Defaults.IntervalMinUs)}..{Shown(Defaults.IntervalMaxUs)}]",
        CustomParser = Range,
    };

    private readonly Option<double> hold = Milliseconds("--hold-ms", "How long the contact is held closed.", Defaults.HoldUs);
    private readonly Option<double> timeOut = Milliseconds("--time-out-ms", "Nothing within this after the press is a miss.", Defaults.TimeOutUs);
    private readonly Option<double> rearm = Milliseconds("--rearm-ms", "Quiet time before the next press.", Defaults.RearmUs);
    private readonly Option<uint> seed = SeedOption.Create();
    private readonly Option<bool> narrow = new("--allow-narrow-interval") { Description = "Allow press intervals that hardly vary; they alias with report and frame periods." };
    private readonly Option<bool> falling = new("--falling") { Description = "The response edge falls (light: darker)." };
    private readonly Option<int> threshold = new("--light-threshold") { Description = "Light threshold in 1/256 of the supply.", DefaultValueFactory = _ => 128 };
    private readonly ActuationOptions actuation = new();
    private readonly Option<string?> host = new("--host") { Description = "The host and its system, for the record." };
    private readonly Option<string?> application = new("--application") { Description = "The application that shows the response." };
    private readonly Option<double?> frameCap = new Option<double?>("--frame-cap-hz") { Description = "Its frame cap." }.TakesNumber(positive: true);
    private readonly Option<double?> refresh = new Option<double?>("--refresh-hz") { Description = "The screen's refresh rate." }.TakesNumber(positive: true);
    private readonly Option<string?> battery = new("--battery") { Description = "State of the device's battery." };
    private readonly Option<string?> notes = new("--notes") { Description = "Anything about the room or the set-up." };

    public RunOptions() => response.AcceptOnlyFromAmong("light", "edge", "echo");

    public void AddTo(Command command)
    {
        Option[] all =
        [
            response, trials, halfWidth, interval, hold, timeOut, rearm, seed, narrow, falling, threshold,
            host, application, frameCap, refresh, battery, notes,
        ];
        foreach (var option in all)
        {
            command.Add(option);
        }

        actuation.AddTo(command);
    }

    public RunRequest Request(ParseResult parsed, SessionKey key)
    {
        var (min, max) = parsed.GetValue(interval) ?? (Defaults.IntervalMinUs, Defaults.IntervalMaxUs);
        return new RunRequest
        {
            Key = key,
            Settings = new RunSettings(
                parsed.GetValue(response)!,
                min,
                max,
                Microseconds(parsed.GetValue(hold)),
                Microseconds(parsed.GetValue(timeOut)),
                Microseconds(parsed.GetValue(rearm)),
                parsed.GetValue(seed)) { Actuation = actuation.Read(parsed) },
            Trials = parsed.GetValue(trials),
            HalfWidthMs = parsed.GetValue(halfWidth),
            AllowNarrowInterval = parsed.GetValue(narrow),
            FallingEdge = parsed.GetValue(falling),
            LightThreshold = parsed.GetValue(threshold),
            Bench = new BenchNotes
            {
                Host = parsed.GetValue(host),
                Application = parsed.GetValue(application),
                FrameCapHz = parsed.GetValue(frameCap),
                RefreshHz = parsed.GetValue(refresh),
                Battery = parsed.GetValue(battery),
                RoomNotes = parsed.GetValue(notes),
            },
        };
    }

    private static Option<double> Milliseconds(string name, string description, long defaultUs) =>
        new Option<double>(name) { Description = description, DefaultValueFactory = _ => defaultUs / 1000.0 }.TakesNumber();

    private static string Shown(long microseconds) => (microseconds / 1000.0).ToString(CultureInfo.InvariantCulture);

    private static long Microseconds(double milliseconds) => (long)Math.Round(milliseconds * 1000);

    private static (long Min, long Max)? Range(ArgumentResult argument)
    {
        var parts = argument.Tokens[0].Value.Split("..");
        if (parts.Length == 2
            && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var min)
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var max)
            && double.IsFinite(min) && double.IsFinite(max) && min <= max)
        {
            return (Microseconds(min), Microseconds(max));
        }

        argument.AddError($"'{argument.Tokens[0].Value}' is not a range for --interval-ms; write it as 70..120.");
        return null;
    }
}
