using Tarry.Metrology;

namespace Tarry.Studies.Tests;

/// <summary>A disk, a cable or a hand that changes one bit of what was sealed.</summary>
public sealed class FlippedBitTests
{
    private const int Positions = 1000;

    [Fact]
    public void Check_OfOneFlippedBitAnywhereInSealedData_NamesTheFileEveryTime()
    {
        using var scratch = Sealed();
        string[] files = [.. Directory.GetFiles(Path.Combine(scratch.Folder, "sessions"), "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
        var lengths = files.Select(file => new FileInfo(file).Length).ToArray();
        var random = new SeededGenerator(1);
        var hit = new HashSet<string>();
        for (var i = 0; i < Positions; i++)
        {
            var bit = (long)(random.NextDouble() * 8 * lengths.Sum());
            var file = 0;
            for (; bit >= 8 * lengths[file]; file++)
            {
                bit -= 8 * lengths[file];
            }

            var relative = Path.GetRelativePath(scratch.Folder, files[file]).Replace('\\', '/');
            using (Flipped(files[file], bit))
            {
                var result = StudyCheck.Run(scratch.Study);
                Assert.False(result.Passed);
                Assert.Equal([(StudyProblemKind.FileChanged, relative)], result.Problems.Select(problem => (problem.Kind, problem.Place)));
            }

            hit.Add(relative);
        }

        Assert.Equal(files.Length, hit.Count);
        Assert.True(StudyCheck.Run(scratch.Study).Passed);
    }

    [Fact]
    public void Check_OfEveryBitOfTheManifestFlipped_NeverFindsTheStudyWhole()
    {
        using var scratch = Sealed();
        var manifest = scratch.PathOf("manifest.json");
        var bits = 8 * new FileInfo(manifest).Length;
        for (long bit = 0; bit < bits; bit++)
        {
            using (Flipped(manifest, bit))
            {
                Assert.False(Passes(scratch), $"bit {bit % 8} of byte {bit / 8} of the manifest");
            }
        }
    }

    private static bool Passes(ScratchStudy scratch)
    {
        try
        {
            return StudyCheck.Run(scratch.Study).Passed;
        }
        catch (StudyException refusal) when (refusal.Place == "manifest.json")
        {
            return false;
        }
    }

    private static ScratchStudy Sealed()
    {
        var scratch = new ScratchStudy("quill-usb", "quill-radio");
        scratch.Seal(responses: 300);
        scratch.Seal(sitting: "tuesday", responses: 300);
        scratch.Seal(condition: "quill-radio", responses: 300);
        return scratch;
    }

    private static Restored Flipped(string file, long bit)
    {
        var before = File.ReadAllBytes(file);
        var after = (byte[])before.Clone();
        after[bit / 8] ^= (byte)(1 << (int)(bit % 8));
        File.WriteAllBytes(file, after);
        return new Restored(file, before);
    }

    private sealed record Restored(string File, byte[] Content) : IDisposable
    {
        public void Dispose() => System.IO.File.WriteAllBytes(File, Content);
    }
}
