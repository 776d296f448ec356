using System.Globalization;
using Tarry.Studies.Sticks;

namespace Tarry.Studies.Sessions;

/// <summary>A folder in <c>sessions/</c>: a session as first sealed, or a correction of it, <c>sitting.condition@2</c> and on.</summary>
internal readonly record struct SessionEntry(SessionKey Key, int Revision)
{
    /// <summary>The entry that would replace this one.</summary>
    public SessionEntry Next => this with { Revision = Revision + 1 };

    /// <summary>A session as first sealed.</summary>
    public static implicit operator SessionEntry(SessionKey key) => new(key, 1);

    /// <summary>The entry that a folder's name stands for; null if it stands for none.</summary>
    public static SessionEntry? ParseOrNull(string name)
    {
        var at = name.IndexOf('@', StringComparison.Ordinal);
        var revision = 1;
        if (at >= 0 && !(int.TryParse(name.AsSpan(at + 1), NumberStyles.None, CultureInfo.InvariantCulture, out revision) && revision > 1))
        {
            return null;
        }

        var parts = (at < 0 ? name : name[..at]).Split('.');
        var procedure = parts.Length == 3 ? StickProcedures.Find(parts[2]) : null;
        var entry = (parts.Length == 2 || procedure is not null) && Names.IsName(parts[0]) && Names.IsName(parts[1])
            ? new SessionEntry(new SessionKey(parts[0], parts[1], procedure), revision)
            : (SessionEntry?)null;
        return entry?.ToString() == name ? entry : null;
    }

    /// <summary>The folder's name.</summary>
    public override string ToString() =>
        Revision == 1 ? Key.ToString() : string.Create(CultureInfo.InvariantCulture, $"{Key}@{Revision}");
}
