using System.Collections.Frozen;
using System.Diagnostics;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Messages;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Tables;
using StabilityStudy.Files.Tests.OwnTables;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>Damaged messages never end in an exception or take long, and never bring a person into a row or query.</summary>
public sealed class MessageFuzzTests
{
    private const int Usual = 10_000;
    private const int Studies = 500;
    private const int Seed = 20260311;
    private const long MostBytes = 200 << 20;

    private static readonly int s_count = LongProof.Setting("FUZZ_INPUTS", Usual);

    [Fact]
    public void Damaged_messages_are_read_or_asked_about()
    {
        var random = new Random(Seed);
        byte[][] files =
        [
            .. Enumerable.Range(1, 8).Select(seed => new ResultMessages(seed).File(Sent(4))),
        ];
        var longest = TimeSpan.Zero;
        for (var i = 0; i < s_count; i++)
        {
            var watch = Stopwatch.StartNew();
            var bytes = Replaced(files[i % files.Length], random);
            var (rows, queries) = Read(bytes);
            Assert.All(rows, row => Assert.Equal(MessageColumns.Names.Length, row.Cells.Length));
            AssertNoPerson(rows, queries);

            // Parts that are moved can bring any field to any place; no exception is all that can be asked.
            Read(Moved(bytes, random));
            longest = watch.Elapsed > longest ? watch.Elapsed : longest;
        }

        Assert.True(longest < TimeSpan.FromSeconds(5), $"{longest}");
    }

    [Fact]
    public void A_study_with_damaged_messages_is_read_or_asked_about()
    {
        var random = new Random(Seed);
        var good = new ResultMessages(3).File(Sent(12));
        for (var i = 0; i < Math.Max(Studies, s_count / 20); i++)
        {
            var bytes = Replaced(good, random);
            var outcome = StudyIntake.Read(
                MessageCases.File(
                    random.Next(2) == 0 ? bytes : Moved(bytes, random),
                    MessageCases.Settings + "[read.specimens]\ntimes_from_messages = true\n"
                )
            );

            Assert.True(
                outcome.TryGet(out _)
                    || outcome.Queries.Any(query => query.Severity == Severity.Stop)
            );
        }
    }

    [Fact]
    public void Random_bytes_are_read_or_asked_about()
    {
        var random = new Random(Seed);
        var signs = "MSHOBXRSPM|^~\\&|||\r\r0123.\v\u001C"u8.ToArray();
        for (var i = 0; i < s_count; i++)
        {
            var bytes = new byte[random.Next(400)];
            for (var place = 0; place < bytes.Length; place++)
            {
                bytes[place] =
                    random.Next(20) == 0
                        ? (byte)random.Next(256)
                        : signs[random.Next(signs.Length)];
            }

            Read(bytes);
            Read([.. "MSH|^~\\&|||||||ORU^R01|1|P|2.5.1\rOBR|1\r"u8, .. bytes]);
        }
    }

    [Theory]
    [InlineData('|')]
    [InlineData('^')]
    [InlineData('~')]
    [InlineData('&')]
    [InlineData('\\')]
    [InlineData('\r')]
    [InlineData('\v')]
    public void A_hundred_megabytes_of_one_sign_take_neither_time_nor_memory(char sign)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        byte[] bytes =
        [
            .. "MSH|^~\\&|||||||ORU^R01|1|P|2.5.1\rOBR|1\rOBX|1|ST|A^B^C||"u8,
            .. Enumerable.Repeat((byte)sign, 100 << 20),
        ];
        var watch = Stopwatch.StartNew();
        var made = GC.GetAllocatedBytesForCurrentThread();

        Read(bytes);

        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), $"{watch.Elapsed}");
        var used = GC.GetAllocatedBytesForCurrentThread() - made;
        Assert.True(used < MostBytes || sign == '\r', $"{used} bytes, {made - before} to make it");
    }

    [Fact]
    public void More_lines_than_any_study_has_are_refused()
    {
        byte[] bytes =
        [
            .. "MSH|^~\\&|||||||ORU^R01|1|P|2.5.1\r"u8,
            .. Enumerable.Repeat((byte)'\n', Words.StudyLimits.TableLines + 1),
        ];

        Assert.Contains(Read(bytes).Queries, query => query.Code == "file-too-large");
    }

    private static void AssertNoPerson(List<TableLine> rows, IEnumerable<DataQuery> queries)
    {
        var shown = rows.Skip(1)
            .SelectMany(row => row.Cells)
            .SelectMany(cell =>
                new[] { cell.Text, cell.Fault?.Message, cell.Fault?.Observed, cell.Fault?.Action }
            )
            .Concat(
                queries.SelectMany(query => new[] { query.Message, query.Observed, query.Action })
            );
        foreach (var text in shown)
        {
            Assert.DoesNotContain(ResultMessages.Mark, text ?? "", StringComparison.Ordinal);
        }
    }

    private static (List<TableLine> Rows, IReadOnlyList<DataQuery> Queries) Read(byte[] bytes)
    {
        var queries = new QueryList();
        var settings = new MessageSettings(
            FileEncoding.Utf8,
            null,
            FrozenDictionary<string, StatusMeaning>.Empty,
            MessageColumns.Names.ToFrozenSet(),
            _ => false
        );
        List<TableLine> rows =
        [
            .. new MessageReading(settings, "results.hl7", queries).Lines(bytes),
        ];
        return (rows, queries.ToImmutable());
    }

    private static byte[] Replaced(byte[] good, Random random)
    {
        byte[] bytes = [.. good];
        for (var changes = random.Next(1, 6); changes > 0; changes--)
        {
            bytes[random.Next(bytes.Length)] =
                random.Next(2) == 0
                    ? (byte)random.Next(256)
                    : "|^~\\&\r\n\v\u001C\"09-."u8[random.Next(14)];
        }

        return random.Next(8) == 0 ? bytes[..random.Next(bytes.Length)] : bytes;
    }

    /// <summary>A part of the bytes is taken out, put elsewhere, or repeated.</summary>
    private static byte[] Moved(byte[] bytes, Random random)
    {
        if (bytes.Length < 2)
        {
            return bytes;
        }

        var start = random.Next(bytes.Length);
        var end = random.Next(start, Math.Min(bytes.Length, start + 200));
        var part = bytes[start..end];
        byte[] rest = random.Next(2) == 0 ? bytes : [.. bytes[..start], .. bytes[end..]];
        var place = random.Next(rest.Length + 1);
        return random.Next(3) == 0 ? rest : [.. rest[..place], .. part, .. rest[place..]];
    }

    private static IEnumerable<ResultMessages.Sent> Sent(int specimens) =>
        DeliveredData
            .Delivered.Where(test => test.Specimen <= specimens)
            .Select(test => new ResultMessages.Sent
            {
                Tube = $"{test.Code}-{test.Tube}",
                Code = "APTT",
                Result = test.Result,
                Unit = "s",
                Tested = new(test.Tested, TimeSpan.FromHours(1)),
                Collected = new(test.Collected, TimeSpan.FromHours(1)),
            });
}
