using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.DelimitedText;

/// <summary>The conditions, sittings and sessions that the files of an import have named.</summary>
internal sealed class SessionRegister
{
    /// <summary>More than any bench runs; a file with more has something else in the column.</summary>
    private const int MostSessions = 10_000;

    private readonly Dictionary<SessionKey, string> files = [];

    public SessionRegister(IReadOnlyList<ConditionEntry> existing)
    {
        var byId = existing.ToDictionary(condition => condition.Id, StringComparer.Ordinal);
        Conditions = new NameRegister<ImportedCondition>("condition", (id, text) => new ImportedCondition(id, text, byId.GetValueOrDefault(id)));
        Sittings = new NameRegister<string>("sitting", (id, _) => id);
    }

    public NameRegister<ImportedCondition> Conditions { get; }

    public NameRegister<string> Sittings { get; }

    /// <summary>Takes a session for a file.</summary>
    /// <exception cref="ImportException">A file before has it, or there are too many.</exception>
    public void Claim(SessionKey session, string file, string place)
    {
        if (files.TryGetValue(session, out var other))
        {
            throw new ImportException(
                $"The session {session} is in {other} as well.", place, "A session comes from one file: join them, or give one of them another sitting.");
        }

        if (files.Count == MostSessions)
        {
            throw new ImportException(
                $"The files hold more than {MostSessions} sessions.", place, "Check that the condition and the sitting are in the columns that they were taken from, or import in parts.");
        }

        files.Add(session, file);
    }
}
