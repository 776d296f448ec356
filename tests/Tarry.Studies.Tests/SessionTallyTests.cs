using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests;

public sealed class SessionTallyTests
{
    private static readonly SessionData _session = new(
        ScratchStudy.Record(),
        [
            ScratchStudy.Response(1),
            ScratchStudy.Missed(2),
            new Trial(3, 0, 10, 0, null, Outcome.Early, TrialFlags.None, 0),
            new Trial(4, 0, null, null, null, Outcome.Refused, TrialFlags.None, 0),
            ScratchStudy.Response(5),
            ScratchStudy.Response(6),
        ],
        Sealed: true);

    [Fact]
    public void Of_NoExclusion_CountsEachTrialOnce() =>
        Assert.Equal(new SessionCounts(Used: 3, Missed: 1, Early: 1, Refused: 1, Excluded: 0), SessionTally.Of(_session, []));

    [Fact]
    public void Of_OverlappingExclusions_CountATrialOnceWhateverItsOutcome()
    {
        Exclusion[] exclusions = [Exclude(null, 2), Exclude(2, 4), Exclude(6, null), new(new SessionKey("tuesday", "quill-usb"), "other", null, null)];
        Assert.Equal(new SessionCounts(1, 0, 0, 0, 5), SessionTally.Of(_session, exclusions));
        Assert.Equal(5, Assert.Single(SessionTally.Used(_session, exclusions)).Sequence);
        Assert.Equal(6, SessionTally.Of(_session, exclusions).Captured);
    }

    [Fact]
    public void Of_WholeSessionExcluded_UsesNothing()
    {
        Assert.Equal(new SessionCounts(0, 0, 0, 0, 6), SessionTally.Of(_session, [Exclude(null, null)]));
        Assert.Empty(SessionTally.NotExcluded(_session, [Exclude(null, null)]));
    }

    private static Exclusion Exclude(long? first, long? last) => new(_session.Record.Key, "because", first, last);
}
