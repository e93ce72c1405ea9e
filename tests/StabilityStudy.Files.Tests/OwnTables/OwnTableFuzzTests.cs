using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>Damaged tables of a facility never end in an exception, and a damaged workbook never in other numbers.</summary>
[Trait("lane", "slow")]
public sealed class OwnTableFuzzTests
{
    private const int Usual = 10_000;
    private const int Seed = 20260309;

    private static readonly int s_count = LongProof.Setting("FUZZ_INPUTS", Usual);

    [Fact]
    public void A_damaged_workbook_is_a_query_or_the_same_data()
    {
        var good = MisreadingCases.GoodBook();
        var expected = CanonicalTests.Read(MisreadingCases.InBook(good)).Canonical.Data[1].Sha256;
        var random = new Random(Seed);
        for (var i = 0; i < s_count; i++)
        {
            var outcome = StudyIntake.Read(MisreadingCases.InBook(Damaged(good, random)));
            if (outcome.TryGet(out var study))
            {
                Assert.Equal(expected, study.Canonical.Data[1].Sha256);
            }
            else
            {
                Assert.Contains(outcome.Queries, query => query.Severity == Severity.Stop);
            }
        }
    }

    [Fact]
    public void A_damaged_export_or_description_is_read_or_asked_about()
    {
        var random = new Random(Seed);
        StudyBytes[] studies =
        [
            .. MisreadingCases
                .All.Select(item => item.Files)
                .Where(files => !files.Files.ContainsKey("book.xlsx")),
        ];
        for (var i = 0; i < s_count; i++)
        {
            var files = studies[i % studies.Length];
            var name = files.Files.Keys.ElementAt(random.Next(files.Files.Count));
            var outcome = StudyIntake.Read(
                files.With(name, Damaged(files.Files[name].ToArray(), random))
            );

            Assert.True(
                outcome.TryGet(out _)
                    || outcome.Queries.Any(query => query.Severity == Severity.Stop)
            );
        }
    }

    private static byte[] Damaged(byte[] good, Random random)
    {
        byte[] bytes = [.. good];
        for (var changes = random.Next(1, 6); changes > 0; changes--)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        return random.Next(8) == 0 ? bytes[..random.Next(bytes.Length)] : bytes;
    }
}
