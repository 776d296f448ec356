namespace Tarry.Rig.Frames;

/// <summary>Reads the fields of a body in order and remembers the first error, so that a parser reads like the table it follows.</summary>
internal sealed class FieldReader(string body)
{
    private readonly string[] fields = body.Split(' ');
    private int next = 1;

    /// <summary>The first thing found wrong.</summary>
    public FrameError? Error { get; private set; }

    /// <summary>The kind, or a null character if the first field is no single letter.</summary>
    public char Kind => fields[0].Length == 1 ? fields[0][0] : '\0';

    /// <summary>Whether the kind is followed by this many fields.</summary>
    public bool Has(int count)
    {
        if (fields.Length - 1 != count)
        {
            Fail(FrameError.WrongNumberOfFields);
        }

        return Error is null;
    }

    /// <summary>A number of a fixed width within a range.</summary>
    public ulong Number(int width, ulong minimum = 0, ulong maximum = ulong.MaxValue)
    {
        var field = OfWidth(width, width);
        if (!HexField.TryRead(field.AsSpan(), out var value))
        {
            Fail(FrameError.FieldNotHex);
        }
        else if (value < minimum || value > maximum)
        {
            Fail(FrameError.FieldOutOfRange);
        }

        return value;
    }

    /// <summary>Pairs of numbers of a fixed width without a space between, at least one.</summary>
    public List<ulong> Numbers(int width, int most, ulong maximum)
    {
        var field = OfWidth(2 * width, most * width);
        var numbers = new List<ulong>();
        if (field.Length % (2 * width) != 0)
        {
            Fail(FrameError.FieldOfWrongWidth);
            return numbers;
        }

        for (var start = 0; start < field.Length; start += width)
        {
            if (!HexField.TryRead(field.AsSpan(start, width), out var value))
            {
                Fail(FrameError.FieldNotHex);
            }
            else if (value > maximum)
            {
                Fail(FrameError.FieldOutOfRange);
            }

            numbers.Add(value);
        }

        return numbers;
    }

    /// <summary>A number of a fixed width, or <c>-</c> for none.</summary>
    public ulong? NumberOrNone(int width)
    {
        if (Error is null && fields[next] == "-")
        {
            next++;
            return null;
        }

        return Number(width);
    }

    /// <summary>A name of 1-16 characters of <c>[a-z0-9.-]</c>.</summary>
    public string Name()
    {
        var field = OfWidth(1, 16);
        Require(field.All(c => c is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '.' or '-'));
        return field;
    }

    /// <summary>A single lower-case letter.</summary>
    public char Letter()
    {
        var field = OfWidth(1, 1);
        Require(field.All(char.IsAsciiLetterLower));
        return field.Length == 1 ? field[0] : '\0';
    }

    /// <summary>A word from a list.</summary>
    public T Word<T>(params ReadOnlySpan<(string Word, T Value)> words)
    {
        var field = OfWidth(1, LineReader.MaximumLength);
        foreach (var (word, value) in words)
        {
            if (word == field)
            {
                return value;
            }
        }

        Fail(FrameError.FieldOutOfRange);
        return words[0].Value;
    }

    /// <summary>A letter that stands for an outcome.</summary>
    public char OutcomeLetter()
    {
        var field = OfWidth(1, 1);
        if (field is not ("r" or "m" or "e"))
        {
            Fail(FrameError.UnknownOutcome);
        }

        return field.Length == 1 ? field[0] : '\0';
    }

    /// <summary>What must hold between fields.</summary>
    public void Require(bool holds)
    {
        if (!holds)
        {
            Fail(FrameError.FieldOutOfRange);
        }
    }

    private string OfWidth(int minimum, int maximum)
    {
        if (Error is not null)
        {
            return "";
        }

        var field = fields[next++];
        if (field.Length < minimum || field.Length > maximum)
        {
            Fail(FrameError.FieldOfWrongWidth);
        }

        return field;
    }

    private void Fail(FrameError error) => Error ??= error;
}
