using System.Collections.Concurrent;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;

namespace Tarry.Rig.Tests.HostEvents;

public class HostInputFeedTests
{
    [Fact]
    public void Begin_OfADeviceThatGoesAndComesBack_GoesOnWithIt()
    {
        var opened = 0;
        using var told = new BlockingCollection<int>();
        using var feed = new HostInputFeed(() => ++opened switch
        {
            1 => new OneReport(1),
            2 => throw new HostInputException("It is gone.", "Plug it in."),
            _ => new OneReport(opened),
        });
        feed.Begin(report => told.Add(report.Events[0].Value));
        Assert.Equal([1, 3, 4], new[] { told.Take(TestContext.Current.CancellationToken), told.Take(TestContext.Current.CancellationToken), told.Take(TestContext.Current.CancellationToken) });
        feed.End();
        Assert.True(feed.Absences >= 2);
    }

    [Fact]
    public void Feed_OfADeviceThatIsNotThere_SaysSoAtOnce() =>
        Assert.Throws<HostInputException>(() => new HostInputFeed(() => throw new HostInputException("It is gone.", "Plug it in.")));

    private sealed class OneReport(int value) : IHostInputDevice
    {
        private bool given;

        public HostInputDescription Description { get; } = new() { Path = "one", Name = "One" };

        public InputClock Clock => InputClock.Arrival;

        public long Losses => 0;

        public bool Read(TimeSpan timeout, InputReportHandler onReport)
        {
            if (given)
            {
                return false;
            }

            given = true;
            onReport(new InputReport { StampNanoseconds = 0, Events = [new InputEvent(1, 1, value)] });
            return true;
        }

        public void Dispose()
        {
        }
    }
}
