using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>What could be read wrongly is asked about, and never read.</summary>
public sealed class MisreadingTests
{
    public static TheoryData<Misreading> Cases => [.. MisreadingCases.All];

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void What_could_be_read_wrongly_ends_in_a_query(Misreading misreading) =>
        misreading.Require();

    [Fact]
    public void The_plain_data_and_the_good_workbook_give_no_query()
    {
        Assert.Empty(StudyIntake.Read(DeliveredData.Plain).Queries);
        Assert.Empty(StudyIntake.Read(MisreadingCases.InBook(MisreadingCases.GoodBook())).Queries);
    }

    [Fact]
    public void One_cause_is_one_query()
    {
        var files = DeliveredData.Plain.With(
            "results.csv",
            GoodStudy.Utf8(GoodStudy.Text(DeliveredData.Plain, "results.csv").Replace('T', ' '))
        );

        var queries = StudyIntake.Read(files).Queries;

        Assert.Contains(
            "in 36 rows",
            Assert.Single(queries, query => query.Code == "not-a-time").Message,
            StringComparison.Ordinal
        );
    }
}
