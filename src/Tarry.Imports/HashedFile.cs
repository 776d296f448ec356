using System.Security.Cryptography;

namespace Tarry.Imports;

/// <summary>A file whose SHA-256 is computed as it is read, beside its reader; what is read again does not count twice.</summary>
internal sealed class HashedFile(FileStream file) : Stream
{
    private const int ChunkBytes = 65_536;

    /// <summary>Fewer bytes are hashed sooner than they are handed over.</summary>
    private const int WorthHandingOver = 16_384;
    private readonly IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private byte[] handedOver = [];
    private Task hashing = Task.CompletedTask;
    private long hashed;

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => file.Length;

    public override long Position
    {
        get => file.Position;
        set => file.Position = value;
    }

    /// <summary>The SHA-256 of what has been read, from the start on, in lower-case hex.</summary>
    public string Sha256
    {
        get
        {
            hashing.Wait();
            return Convert.ToHexStringLower(hash.GetCurrentHash());
        }
    }

    public override int Read(Span<byte> buffer)
    {
        var position = file.Position;
        var read = file.Read(buffer);
        if (position + read > hashed)
        {
            Append(buffer[(int)(hashed - position)..read]);
            hashed = position + read;
        }

        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <summary>Goes to the beginning of the line so many lines behind a place, and says where that is.</summary>
    public long SkipLines(long from, long lines)
    {
        Position = from;
        var chunk = new byte[ChunkBytes];
        var at = from;
        var afterReturn = false;
        for (var read = Read(chunk); read > 0; read = Read(chunk))
        {
            var rest = chunk.AsSpan(0, read);
            while (!rest.IsEmpty)
            {
                var skipped = 1;
                if (!afterReturn || rest[0] != '\n')
                {
                    if (lines == 0)
                    {
                        return Position = at;
                    }

                    var lineEnd = rest.IndexOfAny((byte)'\r', (byte)'\n');
                    skipped = lineEnd < 0 ? rest.Length : lineEnd + 1;
                    lines -= lineEnd < 0 ? 0 : 1;
                }

                afterReturn = rest[skipped - 1] == '\r';
                at += skipped;
                rest = rest[skipped..];
            }
        }

        return at;
    }

    public override long Seek(long offset, SeekOrigin origin) => file.Seek(offset, origin);

    public override void Flush() => throw new NotSupportedException("It is only read.");

    public override void SetLength(long value) => throw new NotSupportedException("It is only read.");

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException("It is only read.");

    // One copy at a time is on its way, so that memory stays bounded and the order is that of the file.
    private void Append(ReadOnlySpan<byte> bytes)
    {
        hashing.Wait();
        if (bytes.Length < WorthHandingOver)
        {
            hash.AppendData(bytes);
            return;
        }

        if (handedOver.Length < bytes.Length)
        {
            handedOver = new byte[bytes.Length];
        }

        bytes.CopyTo(handedOver);
        var count = bytes.Length;
        hashing = Task.Run(() => hash.AppendData(handedOver, 0, count));
    }

    protected override void Dispose(bool disposing)
    {
        hashing.Wait();
        hash.Dispose();
        file.Dispose();
        base.Dispose(disposing);
    }
}
