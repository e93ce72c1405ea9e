using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.Messages;
using StabilityStudy.Files.Tests.Suggestions;

namespace StabilityStudy.Files.Tests.OwnTables.Shapes;

/// <summary>The same data through every shape, dialect and kind of file gives the same canonical bytes, but for the lines on which rows stood.</summary>
public sealed class ShapeTests
{
    private const int Usual = 3;

    private static readonly int s_seeds = LongProof.Setting("SHAPED_STUDIES", Usual);

    public static TheoryData<string, string> Ways =>
        [
            .. from shape in Shape.All(ShapedData.Of(1))
            from dialect in Dialect.All
            select new TheoryDataRow<string, string>(shape.Name, dialect.Name),
        ];

    [Theory]
    [MemberData(nameof(Ways))]
    public void A_shape_in_a_dialect_is_read_to_the_same_bytes(string shape, string dialect)
    {
        var way = Dialect.All.Single(item => item.Name == dialect);
        for (var seed = 1; seed <= s_seeds; seed++)
        {
            var data = ShapedData.Of(seed);
            var written = Shape.All(data).Single(item => item.Name == shape);

            RequireSame(written.IsOfPairs ? data.PlainOfPairs : data.Plain, way.Of(written, data));
        }
    }

    [Fact]
    public void Messages_are_read_to_the_same_bytes()
    {
        for (var seed = 1; seed <= 4 * s_seeds; seed++)
        {
            var data = ShapedData.Of(seed);
            RequireSame(data.Plain, AsMessages(data, seed));
        }
    }

    [Fact]
    public void What_is_canonical_is_read_to_itself()
    {
        for (var seed = 1; seed <= 4 * s_seeds; seed++)
        {
            var plain = ShapedData.Of(seed).Plain;
            var study = CanonicalTests.Read(plain);
            var canonical = study.Canonical.Files.Aggregate(
                plain,
                (files, file) => files.With(file.Name, file.Bytes)
            );
            Assert.True(
                StudyIntake.ReadCanonical(canonical, isOfOtherVersion: false).TryGet(out var again)
            );

            Assert.Equal(
                study.Canonical.Files.Select(file => file.Sha256),
                again.Canonical.Files.Select(file => file.Sha256)
            );
        }
    }

    /// <summary>The study with its results as messages.</summary>
    internal static StudyBytes AsMessages(ShapedData data, int seed) =>
        new StudyBytes(data.Plain.Files.Remove("results.csv"))
            .With(
                "results.hl7",
                new ResultMessages(seed).File(
                    data.Tubes.SelectMany(tube =>
                        ShapedData.Analytes.Select(
                            (analyte, i) =>
                                new ResultMessages.Sent
                                {
                                    Tube = $"{tube.Specimen}-{tube.Letter}",
                                    Code = analyte,
                                    Result = tube.Results[i],
                                    Unit = "s",
                                    Tested = new(tube.Tested, TimeSpan.FromHours(1)),
                                    Collected = new(tube.Collected, TimeSpan.FromHours(1)),
                                }
                        )
                    )
                )
            )
            .With(
                "study.toml",
                GoodStudy.Utf8(
                    DeliveredData.Facts(
                        """

                        [read.results]
                        file = "results.hl7"
                        tube_pattern = "{specimen}-{tube}"
                        time_point_of_tube = { A = "baseline", B = "6 h", C = "8 h" }
                        columns = { tube = "specimen_id", analyte = "test_code" }

                        """
                    )
                )
            );

    private static void RequireSame(StudyBytes plain, StudyBytes delivered)
    {
        var (expected, found) = (CanonicalTests.Read(plain), CanonicalTests.Read(delivered));
        foreach (var file in new[] { "specimens.csv", "results.csv" })
        {
            Assert.Equal(
                Delivered.WithoutLines(expected, file),
                Delivered.WithoutLines(found, file)
            );
        }
    }
}
