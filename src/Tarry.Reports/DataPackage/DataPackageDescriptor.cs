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
            json.WriteString("description", "Input latency, measured trial by trial. README.md says how and what the columns are; findings.json is what the trials say.");
            json.WriteString("version", content.Version);
            WriteAuthor(json, content.Author);
            WriteLicence(json, content.Licence);
            WriteSources(json, content.Sessions);
            json.WriteString("made_with", "tarry " + content.Findings.Version);
            json.WriteStartArray("resources");
            foreach (var file in files)
            {
                WriteResource(json, file, trialColumns);
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

    private static void WriteResource(Utf8JsonWriter json, PackagedFile file, IReadOnlyList<TableColumn> trialColumns)
    {
        var (what, mediaType) = PackageFiles.About[file.Name];
        var isTable = file.Name.EndsWith(".csv", StringComparison.Ordinal);
        json.WriteStartObject();
        json.WriteString("name", Names.FromText(isTable ? Path.GetFileNameWithoutExtension(file.Name) : file.Name.Replace('.', '-')));
        json.WriteString("path", file.Name);
        json.WriteString("profile", isTable ? "tabular-data-resource" : "data-resource");
        json.WriteString("description", what);
        json.WriteString("format", Path.GetExtension(file.Name)[1..].ToLowerInvariant());
        json.WriteString("mediatype", mediaType);
        if (file.Name != PackageFiles.TrialsParquet)
        {
            json.WriteString("encoding", "utf-8");
        }

        json.WriteNumber("bytes", file.Bytes);
        json.WriteString("hash", "sha256:" + file.Sha256);
        if (isTable)
        {
            WriteDialect(json);
            WriteSchema(json, file.Name == PackageFiles.TrialsCsv ? trialColumns : HeadlineTable.Columns, file.Name == PackageFiles.TrialsCsv ? TrialsSchema.PrimaryKey : ["condition"]);
        }

        json.WriteEndObject();
    }

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
        json.WriteStartArray("primaryKey");
        foreach (var name in primaryKey)
        {
            json.WriteStringValue(name);
        }

        json.WriteEndArray();
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
