using System.Text;
using Tarry.DamagedInputs;
using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.HidReports;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Imports.Tests.UsbWire;
using Tarry.Imports.Tests.ValueChangeDump;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Tests.DamagedInputs;

/// <summary>Every reader of files that a study takes in.</summary>
/// <param name="folder">A folder for the damaged files.</param>
internal sealed class RecordingReaders(string folder)
{
    private static readonly RecordingTarget Target = new(new SessionKey("monday", "quill"), []);
    private static readonly StickTableOptions Stick = new() { X = new StickRange(0, 255, null), Y = new StickRange(0, 255, null) };
    private static readonly string[] DumpWords =
    [
        "#0", "#99999999999999999999", "#18446744073709551615", "0!", "1\"", "x!", "z\"", "b101 \"", "b", "r1e400 !", "rnan !", "$dumpoff", "$dumpon", "$end", "$comment", "$var wire 1 ! a $end",
        "$var wire 99999999999 ! a $end", "$timescale 1 s $end", "$enddefinitions $end", "\0\0\0\0", "1", "#-5", "\u007f", "$scope module", "s text !",
    ];
    private static readonly string[] SoundWords = ["RIFF", "RF64", "data", "fmt ", "LIST", "\0\0\0\0", "\u00ff\u00ff\u00ff\u00ff", "\u007f\u00f0\0\0", "ds64"];
    private static readonly string[] TextWords =
        ["nan", "inf", "1e308", "-1e308", ",,,,", "\"", "\"\"", "\n\n", "\r", "\r\n", "0.5", "1,5", ";", "\t", "#", "\0", "-0", "999999999999999999999", "response", "missed", "early", "pts_time", "=1+1", "\u00ef\u00bb\u00bf", "\u00ff\u00fe"];

    /// <summary>All of them.</summary>
    public IReadOnlyList<DamagedReader> All()
    {
        DamagedReader[] captures = [.. CaptureReaders.All()];
        DamagedReader[] files =
        [
            OfText("long-form-csv", LongForm(), path => Plan(DelimitedTextImport.Read([path], new DelimitedTextOptions(), []).Single())),
            OfText("delimited-text", Delimited(), path => Plan(DelimitedTextImport.Read([path], new DelimitedTextOptions { Condition = "quill", Sitting = "monday", LatencyColumn = "delay", LatencyUnit = TimeUnit.Milliseconds, DecimalComma = true }, []).Single())),
            OfText("video", Video(), path => Session(VideoImport.Read(path, new VideoOptions { CaptureFps = 100, Window = new PairingWindow(0, 100) }, Target), path)),
            OfText("stick-table", Sticks(), path => Plan(StickTableImport.Read(path, Stick, new RecordingTarget(new SessionKey("monday", "quill", StickProcedure.Rest), [])))),
            Of("value-change-dump", [Encoding.UTF8.GetBytes(DumpText.Presses(8_125, 3_000, 20_000))], DumpWords, Dump),
            Of("usb-cable", [Encoding.UTF8.GetBytes(CableText.Of([0, 1, 255, 0], [1, 0, 3, 0]))], DumpWords, path => UsbCableRecording.Read(path, new UsbCable("DP", "DM", UsbCableSpeed.Low))),
            Of("sound-light", SampleSounds.WithLight(), SoundWords, path => Session(TwoChannelImport.Read(path, SampleSounds.Light, Target), path)),
            Of("sound-clicks", SampleSounds.WithClicks(), SoundWords, path => Session(TwoChannelImport.Read(path, SampleSounds.Clicks, Target), path)),
            Of("hid-descriptor-file", [Encoding.ASCII.GetBytes("05 01 09 05 a1 01 c0"), Encoding.ASCII.GetBytes("0x05, 0x01, 0x09, 0x05, 0xA1, 0x01, 0xC0")], [" ", "0x", ",", "g"], path => HidDescriptorFile.Read(File.ReadAllBytes(path))),
        ];
        var firsts = files.Concat(captures).Select(reader => reader.Valid[0]).ToArray();
        return [.. files.Select(reader => reader with { Foreign = firsts }), .. captures.Select(reader => reader with { Foreign = firsts })];
    }

    private DamagedReader OfText(string name, string[] valid, Action<string> read) => Of(name, [.. valid.Select(Encoding.UTF8.GetBytes)], TextWords, read);

    private DamagedReader Of(string name, byte[][] valid, string[] words, Action<string> read) => new(name, valid, words, input =>
    {
        var path = Path.Combine(folder, name);
        File.WriteAllBytes(path, input);
        read(path);
    })
    {
        IsRefusal = thrown => thrown is ImportException { Problem.Length: > 0, Place.Length: > 0, Remedy.Length: > 0 },
    };

    private static void Dump(string path) => Session(ValueChangeDumpImport.Read(path, new ValueChangeDumpOptions { PressChannel = "contact", ResponseChannel = "lamp", Window = new PairingWindow(0.5, 60) }, Target), path);

    // What is kept adds up, and no more comes out than went in.
    private static void Session(ImportPlan plan, string path)
    {
        Plan(plan);
        var (length, trials) = (new FileInfo(path).Length, plan.Sessions.Single().Trials);
        Require(trials.Count >= 1 && trials.Count <= length, $"{trials.Count} trials came of {length} bytes");
        Require(plan.Record.RowsRead == trials.Count + plan.Record.RefusedUnassigned, "the trials do not add up");
        Require(trials.All(trial => trial.PressTicks >= 0 && trial.LatencyTicks is null or >= 0 && !(trial.LatencyHighTicks < trial.LatencyTicks)), "a time is negative, or an interval turned round");
    }

    private static void Plan(ImportPlan plan) =>
        Require(plan.Record.RowsRead == plan.Record.RowsKept + plan.Record.RefusedTotal && plan.Record.RowsKept > 0, "rows kept and refused are not the rows read");

    private static void Require(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidDataException(otherwise);
        }
    }

    private static string[] LongForm() =>
    [
        "condition,sitting,seq,press_time_us,latency_us,outcome,device\nquill,monday,1,0,8125.5,response,Quill 2\nquill,monday,2,100000,,missed,Quill 2\nboard,monday,1,5,3000,response,\"Board, own\"\nboard,monday,2,200000,12,early,\"Board, own\"\n",
        "# by hand\r\nsession;condition;latency_ms;excluded\r\nmonday;quill;1.5;0\r\nmonday;quill;2.25;1\r\ntuesday;quill;9;0\r\n",
        "condition\tsitting\tlatency_us\tlatency_high_us\nquill\tmonday\t10\t20\nquill\tmonday\t11\t21\n",
    ];

    private static string[] Delimited() =>
    [
        "seq;delay;outcome;note\n1;8,25;response;a\n2;9,5;response;\"b;c\"\n3;;missed;\n",
        "delay\tpress_time_us\n8,25\t0\n9\t100000\n",
        "seq;delay\r\n1;12,5\r\n2;13,5\r\n",
    ];

    private static string[] Sticks() =>
    [
        "time_us,x,y\n1000,128,127\n5000,255,0\n9000,254,1\n",
        "# at rest\r\ntime_ms;x;y;stimulus_deg\r\n1.5;128;127;0\r\n2.5;128.5;127;\r\n",
    ];

    private static string[] Video()
    {
        var text = new StringBuilder("pts_time,press,response\n");
        for (var frame = 0; frame < 40; frame++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{frame / 100.0:0.00},{(frame % 20 > 9 ? 200 : 20)},{(frame % 20 > 12 ? 180 : 30)}\n");
        }

        return [text.ToString()];
    }
}
