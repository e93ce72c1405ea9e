using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

[Trait("lane", "slow")]
public sealed class CultureTests
{
    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_culture_of_the_computer_changes_nothing(string name)
    {
        var expected = Everything();
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
            CultureInfo.CurrentUICulture = CultureInfo.CurrentCulture;

            Assert.Equal(expected, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = before;
        }
    }

    private static List<string> Everything()
    {
        var study = CanonicalTests.Read(GoodStudy.Bytes);
        List<string> all = [study.Identity.InputDigest];
        foreach (var broken in BrokenTomlCases.All.Concat(BrokenCsvCases.All))
        {
            all.AddRange(
                StudyIntake
                    .Read(GoodStudy.Edited(broken.File, broken.From, broken.To))
                    .Queries.Select(query => query.ToString())
            );
        }

        return all;
    }
}
