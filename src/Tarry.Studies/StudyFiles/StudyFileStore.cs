using System.Text;
using Tarry.Studies.Disk;

namespace Tarry.Studies.StudyFiles;

/// <summary>The study file on the disk.</summary>
internal sealed class StudyFileStore(string path)
{
    private static readonly UTF8Encoding _strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads it.</summary>
    public StudyFile Read() => StudyFileReader.Read(StudyFileText.Parse(ReadText()));

    /// <summary>Its text as it stands now.</summary>
    public string ReadText() => ReadFile().Text;

    /// <summary>Changes its text, if what comes out still reads; the file as read again.</summary>
    public StudyFile Edit(Func<string, string> change)
    {
        // Read anew: the user may have edited it since it was opened.
        var (text, mark) = ReadFile();
        StudyFileReader.Read(StudyFileText.Parse(text));
        var changed = change(text);
        var file = StudyFileReader.Read(StudyFileText.Parse(changed));
        if (changed != text)
        {
            Write((mark ? "\uFEFF" : "") + changed);
        }

        return file;
    }

    /// <summary>Writes it anew.</summary>
    public void Write(string text)
    {
        try
        {
            DurableFile.Write(path, _strict.GetBytes(text));
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, StudyFileText.FileName, "The file is as it was.");
        }
    }

    private (string Text, bool ByteOrderMark) ReadFile()
    {
        try
        {
            var text = _strict.GetString(File.ReadAllBytes(path));
            return text.StartsWith('\uFEFF') ? (text[1..], true) : (text, false);
        }
        catch (DecoderFallbackException exception)
        {
            throw new StudyException(
                $"{StudyFileText.FileName} is not UTF-8 text: bad byte at {exception.Index}.",
                $"{StudyFileText.FileName} byte {exception.Index}",
                "Save it as UTF-8 with a text editor.",
                exception);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, StudyFileText.FileName);
        }
    }
}
