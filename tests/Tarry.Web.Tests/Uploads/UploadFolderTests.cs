using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Time.Testing;
using Tarry.Web.Uploads;

namespace Tarry.Web.Tests.Uploads;

public sealed class UploadFolderTests : IDisposable
{
    private readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero));
    private readonly UploadFolder folder;

    public UploadFolderTests() => folder = new UploadFolder(new UploadLimits(1_000, 1_500, 0, TimeSpan.FromHours(1)), time);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Receive_AFile_KeepsItsBytesWithTheirDigest()
    {
        var bytes = Encoding.UTF8.GetBytes("condition,sitting\n");
        var upload = await Receive("../monday.csv", bytes);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(upload.Path, Stop));
        Assert.Equal((bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)), "monday.csv"), (upload.Bytes, upload.Sha256, upload.Name));
        Assert.Same(upload, folder.Of(upload.Id));
    }

    [Theory]
    [InlineData(1_001, 1_001L, 413)]
    [InlineData(1_001, null, 413)]
    [InlineData(10, 1_001L, 413)]
    [InlineData(0, 0L, 400)]
    [InlineData(10, 20L, 400)]
    public async Task Receive_TooLongEmptyOrCutOff_IsRefusedAndNothingIsLeft(int bytes, long? stated, int status)
    {
        var first = await Receive("kept.csv", new byte[1]);
        var refused = await Assert.ThrowsAsync<UploadRefusedException>(() => folder.Receive("long.csv", stated, new MemoryStream(new byte[bytes]), Stop));
        Assert.Equal(status, refused.Status);
        Assert.Single(Directory.GetDirectories(Root(first)));
    }

    [Fact]
    public async Task Receive_MoreInAllThanMayWait_IsRefusedUntilSomethingIsRemoved()
    {
        var first = await Receive("a.csv", new byte[900]);
        Assert.Equal(507, (await Assert.ThrowsAsync<UploadRefusedException>(() => Receive("b.csv", new byte[900]))).Status);
        folder.Remove(first.Id);
        Assert.Equal(900, (await Receive("b.csv", new byte[900])).Bytes);
    }

    [Fact]
    public async Task Receive_WithTooLittleRoomOnTheDisk_IsRefused()
    {
        using var full = new UploadFolder(new UploadLimits(1_000, 1_500, long.MaxValue / 2, TimeSpan.FromHours(1)), time);
        Assert.Equal(507, (await Assert.ThrowsAsync<UploadRefusedException>(() => full.Receive("a.csv", 1, new MemoryStream(new byte[1]), Stop))).Status);
    }

    [Fact]
    public async Task Receive_ThatIsBrokenOff_LeavesNothing()
    {
        var first = await Receive("kept.csv", new byte[1]);
        await Assert.ThrowsAsync<IOException>(() => folder.Receive("broken.csv", 500, new BrokenStream(), Stop));
        Assert.Single(Directory.GetDirectories(Root(first)));
    }

    [Fact]
    public async Task Discard_CanBeTakenBack_AndRemoveCannot()
    {
        var upload = await Receive("a.csv", new byte[1]);
        folder.Discard(upload.Id);
        Assert.Null(folder.Of(upload.Id));
        folder.Restore(upload.Id);
        Assert.NotNull(folder.Of(upload.Id));
        folder.Remove(upload.Id);
        folder.Restore(upload.Id);
        Assert.Null(folder.Of(upload.Id));
        Assert.False(File.Exists(upload.Path));
    }

    [Fact]
    public async Task Receive_AfterOthersHaveWaitedTooLong_DeletesThose()
    {
        var old = await Receive("old.csv", new byte[1]);
        time.Advance(TimeSpan.FromHours(2));
        await Receive("new.csv", new byte[1]);
        Assert.Null(folder.Of(old.Id));
        Assert.False(File.Exists(old.Path));
    }

    [Fact]
    public async Task Dispose_DeletesTheWholeFolder()
    {
        var root = Root(await Receive("a.csv", new byte[1]));
        folder.Dispose();
        Assert.False(Directory.Exists(root));
    }

    [Theory]
    [InlineData("")]
    [InlineData("..")]
    [InlineData("../other")]
    public void Of_AnythingElse_NamesNothing(string id) => Assert.Null(folder.Of(id));

    public void Dispose() => folder.Dispose();

    private static string Root(Upload upload) => Path.GetDirectoryName(Path.GetDirectoryName(upload.Path))!;

    private Task<Upload> Receive(string name, byte[] bytes) => folder.Receive(name, bytes.Length, new MemoryStream(bytes), Stop);

    /// <summary>A connection that is lost after some bytes.</summary>
    private sealed class BrokenStream : MemoryStream
    {
        private bool hasRead;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            if (hasRead)
            {
                throw new IOException("The connection was lost.");
            }

            hasRead = true;
            return ValueTask.FromResult(100);
        }
    }
}
