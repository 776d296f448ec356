using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Imports;

/// <summary>A session about to be sealed, and the entry that it will have.</summary>
internal sealed record ImportedSession(SessionEntry Entry, SessionRecord Record, Trial[] Trials);
