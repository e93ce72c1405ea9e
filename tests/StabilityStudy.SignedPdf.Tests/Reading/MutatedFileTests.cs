using System.Diagnostics;
using StabilityStudy.SignedPdf.Attachments;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Rewriting;
using StabilityStudy.SignedPdf.Tests.Drawing;

namespace StabilityStudy.SignedPdf.Tests.Reading;

/// <summary>Real files damaged at random (always the same way): the answer is a document or a failure, soon, and never an exception.</summary>
public static class MutatedFileTests
{
    private static readonly byte[] Structural =
        "<>[]()/ \n0123456789Robjstream%xref\0\xFF"u8.ToArray();

    [Fact]
    public static void Damaged_classic_files_never_throw_or_hang() =>
        Mutate(Rewritten.Of(DrawnDocument.Draw(pages: 1)), count: 10_100, seed: 1);

    [Fact]
    public static void Damaged_files_with_object_streams_never_throw_or_hang() =>
        Mutate(TestData.Read("object-streams.pdf"), count: 10_100, seed: 2);

    private static void Mutate(byte[] file, int count, int seed)
    {
        Rewritten.Read(file);
        var random = new Random(seed);
        var (read, refused) = (0, 0);
        for (var i = 0; i < count; i++)
        {
            var mutated = Mutated(file, random);
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

    private static byte[] Mutated(byte[] file, Random random)
    {
        var bytes = new List<byte>(file);
        for (var changes = random.Next(1, 4); changes > 0; changes--)
        {
            var place = random.Next(bytes.Count);
            var length = Math.Min(random.Next(1, 40), bytes.Count - place);
            switch (random.Next(6))
            {
                case 0:
                    bytes[place] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes[place] = Structural[random.Next(Structural.Length)];
                    break;
                case 2:
                    bytes.RemoveRange(place, length);
                    break;
                case 3:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(place, length));
                    break;
                case 4:
                    ChangeDigit(bytes, place, random);
                    break;
                default:
                    bytes.Insert(place, Structural[random.Next(Structural.Length)]);
                    break;
            }
        }

        return [.. bytes];
    }

    // Numbers steer the reader: offsets, lengths, counts, references.
    private static void ChangeDigit(List<byte> bytes, int from, Random random)
    {
        var place = bytes.FindIndex(from, static value => value is >= (byte)'0' and <= (byte)'9');
        if (place >= 0)
        {
            bytes[place] = (byte)('0' + random.Next(10));
        }
    }
}
