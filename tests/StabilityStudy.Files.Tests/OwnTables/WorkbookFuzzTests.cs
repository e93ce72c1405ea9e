using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>Damaged workbooks end in a query or give the same data, never other numbers, and never an exception.</summary>
public sealed class WorkbookFuzzTests
{
    private const int Usual = 1500;
    private const int Seed = 20260309;

    [Fact]
    public void A_damaged_workbook_is_a_query_or_the_same_data()
    {
        var good = MisreadingCases.GoodBook();
        var expected = CanonicalTests.Read(MisreadingCases.InBook(good)).Canonical.Data[1].Sha256;
        var random = new Random(Seed);
        var count = LongProof.Setting("STABILITY_STUDY_DAMAGED_WORKBOOKS", Usual);
        for (var i = 0; i < count; i++)
        {
            var bytes = Damaged(good, random);
            var outcome = StudyIntake.Read(MisreadingCases.InBook(bytes));
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
