// How long after a click a page of a large study is painted, beside a plain HTML file of the same bytes.
//
//   dotnet run -c Release --project benchmarks/Tarry.PageBenchmark [conditions sittings trials]
//
// Writes a study (24 conditions, 4 sittings, 1,563 trials a session unless told: 150,048 trials), imports and serves it, waits until
// its findings are there, and opens each page in Chromium: a new window each time. "painted" is the browser's own first contentful paint
// since the navigation began; "interactive" is when the page answers to clicks. The outside baseline is the very HTML and style
// sheets that the server sent, saved and served as files by python3 -m http.server, with no script and no program behind them.
using Tarry.PageBenchmark;

var numbers = args.Select(int.Parse).ToArray();
var (conditions, sittings, trials) = numbers is [var c, var s, var t] ? (c, s, t) : (24, 4, 1563);
var folder = Directory.CreateTempSubdirectory("tarry-pages-").FullName;
try
{
    await PageTimes.Measure(folder, conditions, sittings, trials);
}
finally
{
    Directory.Delete(folder, recursive: true);
}
