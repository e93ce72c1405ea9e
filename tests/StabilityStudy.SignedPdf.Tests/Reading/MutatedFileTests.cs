using System.Diagnostics;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>
/// Real files damaged at random (always the same way): the answer is a document or a failure, soon, and never an exception. The
/// variable FUZZ_INPUTS asks for another number of inputs.
/// </summary>
public static class MutatedFileTests
{
    [Fact]
    public static void Damaged_classic_files_never_throw_or_hang() =>
        Mutate(Rewritten.Of(DrawnDocument.Draw(pages: 1)), seed: 1);

    [Fact]
    public static void Damaged_files_with_object_streams_never_throw_or_hang() =>
        Mutate(TestData.Read("object-streams.pdf"), seed: 2);

    private static void Mutate(byte[] file, int seed)
    {
        var count = LongProof.Setting("FUZZ_INPUTS", 2_000);
        Rewritten.Read(file);
        var random = new Random(seed);
        var (read, refused) = (0, 0);
        for (var i = 0; i < count; i++)
        {
            var mutated = Mutation.Of(file, random);
            var start = Stopwatch.GetTimestamp();
            try
            {
                if (PdfDocumentReader.Read(mutated).TryGet(out var document, out _))
                {
                    read++;
                    EmbeddedFiles.Extract(document);
                    if (i % 100 == 0)
                    {
                        DeterministicRewrite.Rewrite(mutated, Rewritten.Options);
                    }
                }
                else
                {
                    refused++;
                }
            }
            catch (Exception exception)
            {
                throw new InvalidOperationException($"Mutation {i} of seed {seed}.", exception);
            }

            Assert.True(
                Stopwatch.GetElapsedTime(start) < TimeSpan.FromSeconds(1),
                $"Mutation {i} of seed {seed} took too long."
            );
        }

        // Both answers must occur, or the mutations test nothing.
        Assert.InRange(read, count / 100, count);
        Assert.InRange(refused, count / 100, count);
    }
}
