using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.DataPackage;

/// <summary><c>datapackage.json</c>: what is in a package, by the Frictionless Data Package specification, version 1.</summary>
internal static class DataPackageDescriptor
{
    public static string Write(DataPackageContent content, IReadOnlyList<TableColumn> trialColumns, IReadOnlyList<PackagedFile> files)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("profile", "data-package");
            json.WriteString("name", Names.FromText(content.Study.Title) ?? "study");
            json.WriteString("title", content.Study.Title);
            json.WriteString("description", PackageReadme.What(content) + " README.md says how and what the columns are; findings.json is what the data say.");
            json.WriteString("version", content.Version);
            WriteAuthor(json, content.Author);
            WriteLicence(json, content.Licence);
            WriteSources(json, content.AllSessions);
            json.WriteString("made_with", "tarry " + content.Findings.Version);
            json.WriteStartArray("resources");
            foreach (var file in files)
            {
                WriteResource(json, file, TableOf(file.Name, content, trialColumns));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void WriteAuthor(Utf8JsonWriter json, string? author)
    {
        if (string.IsNullOrWhiteSpace(author))
        {
            return;
        }

        json.WriteStartArray("contributors");
        json.WriteStartObject();
        json.WriteString("title", author.Trim());
        json.WriteString("role", "author");
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void WriteLicence(Utf8JsonWriter json, Licence? licence)
    {
        if (licence is null)
        {
            return;
        }

        json.WriteStartArray("licenses");
        json.WriteStartObject();
        json.WriteString("name", licence.Id);
        if (licence is { Title: { } title, Address: { } address })
        {
            json.WriteString("title", title);
            json.WriteString("path", address);
        }

        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void WriteSources(Utf8JsonWriter json, IReadOnlyList<SessionRecord> sessions)
    {
        var sources = PackageSources.Of(sessions);
        if (sources.Count == 0)
        {
            return;
        }

        json.WriteStartArray("sources");
        foreach (var source in sources)
        {
            json.WriteStartObject();
            json.WriteString("title", source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // The columns of a CSV and what tells its rows apart; null for anything else. Two reports or positions may come at one time.
    private static (IReadOnlyList<TableColumn> Columns, IReadOnlyList<string> PrimaryKey)? TableOf(string name, DataPackageContent content, IReadOnlyList<TableColumn> trialColumns) =>
        name == PackageFiles.TrialsCsv ? (trialColumns, TrialsSchema.PrimaryKey)
        : name == HeadlineTable.FileName ? (HeadlineTable.Columns, ["condition"])
        : name == StickFindingsTable.FileName ? (StickFindingsTable.Columns, StickFindingsTable.PrimaryKey)
        : name == PackageFiles.StickRecordings ? (StickRecordingsSchema.Of(content.StickRecordingColumns, content.Study), StickRecordingsSchema.PrimaryKey)
        : content.Recordings.FirstOrDefault(recording => recording.CsvName == name)?.Session switch
        {
            { ReportStream: { } stream } => (ReportsSchema.Of(stream), []),
            { Stick: { } setup } => (StickSchema.Of(setup), []),
            _ => null,
        };

    private static void WriteResource(Utf8JsonWriter json, PackagedFile file, (IReadOnlyList<TableColumn> Columns, IReadOnlyList<string> PrimaryKey)? table)
    {
        var (what, mediaType) = PackageFiles.Describe(file.Name);
        var isTable = table is not null;
        json.WriteStartObject();
        json.WriteString("name", ResourceName(file.Name, isTable));
        json.WriteString("path", file.Name);
        json.WriteString("profile", isTable ? "tabular-data-resource" : "data-resource");
        json.WriteString("description", what);
        json.WriteString("format", Path.GetExtension(file.Name)[1..].ToLowerInvariant());
        json.WriteString("mediatype", mediaType);
        if (!file.Name.EndsWith(".parquet", StringComparison.Ordinal))
        {
            json.WriteString("encoding", "utf-8");
        }

        json.WriteNumber("bytes", file.Bytes);
        json.WriteString("hash", "sha256:" + file.Sha256);
        if (table is var (columns, primaryKey))
        {
            WriteDialect(json);
            WriteSchema(json, columns, primaryKey);
        }

        json.WriteEndObject();
    }

    // A name may hold dots and slashes: the file's own keeps two long ones apart.
    private static string? ResourceName(string name, bool isTable) => name.Contains('/', StringComparison.Ordinal)
        ? name
        : Names.FromText(isTable ? Path.GetFileNameWithoutExtension(name) : name.Replace('.', '-'));

    private static void WriteDialect(Utf8JsonWriter json)
    {
        json.WriteStartObject("dialect");
        json.WriteString("delimiter", ",");
        json.WriteString("lineTerminator", "\n");
        json.WriteBoolean("doubleQuote", true);
        json.WriteBoolean("header", true);
        json.WriteEndObject();
    }

    private static void WriteSchema(Utf8JsonWriter json, IReadOnlyList<TableColumn> columns, IReadOnlyList<string> primaryKey)
    {
        json.WriteStartObject("schema");
        json.WriteStartArray("fields");
        foreach (var column in columns)
        {
            WriteField(json, column);
        }

        json.WriteEndArray();
        json.WriteStartArray("missingValues");
        json.WriteStringValue("");
        json.WriteEndArray();
        if (primaryKey.Count > 0)
        {
            json.WriteStartArray("primaryKey");
            foreach (var name in primaryKey)
            {
                json.WriteStringValue(name);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void WriteField(Utf8JsonWriter json, TableColumn column)
    {
        json.WriteStartObject();
        json.WriteString("name", column.Name);
        json.WriteString("type", column.Type);
        json.WriteString("description", column.Unit is null ? column.Description : $"{column.Description} Unit: {column.Unit}.");
        if (column.Unit is { } unit)
        {
            json.WriteString("unit", unit);
        }

        json.WriteStartObject("constraints");
        if (column.Required)
        {
            json.WriteBoolean("required", true);
        }

        if (column.Minimum is { } minimum)
        {
            json.WriteNumber("minimum", minimum);
        }

        if (column.Maximum is { } maximum)
        {
            json.WriteNumber("maximum", maximum);
        }

        if (column.Levels is { } levels)
        {
            json.WriteStartArray("enum");
            foreach (var level in levels)
            {
                json.WriteStringValue(level);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }
}
