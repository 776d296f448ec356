using Tarry.Rig.Link;

namespace Tarry.Rig.Tests.Link;

public class SerialRigPortTests
{
    [Fact]
    public void Open_NoSuchPort_SaysWhatToDo()
    {
        var failure = Assert.Throws<RigException>(() => SerialRigPort.Open(OperatingSystem.IsWindows() ? "COM254" : "/dev/no-such-port"));
        Assert.Contains("no-such-port", failure.Message.Replace("COM254", "no-such-port", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.NotEmpty(failure.Remedy);
    }

    [Fact]
    public void List_GivesEveryNameOnceInOrder()
    {
        var names = SerialRigPort.List();
        Assert.Equal(names.Distinct().Order(StringComparer.Ordinal), names);
    }
}
