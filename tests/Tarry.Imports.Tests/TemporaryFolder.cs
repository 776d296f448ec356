using System.Runtime.CompilerServices;
using System.Text;

namespace Tarry.Imports.Tests;

/// <summary>A folder for the files of one test, named after it; removed afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public TemporaryFolder([CallerMemberName] string test = "")
    {
        Path = Directory.CreateTempSubdirectory($"tarry-{test}-").FullName;
    }

    public string Path { get; }

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text, new UTF8Encoding(false));
        return this[name];
    }

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(this[name], bytes);
        return this[name];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
