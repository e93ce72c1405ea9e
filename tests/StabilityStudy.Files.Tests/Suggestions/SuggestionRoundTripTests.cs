using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Suggestions;
using StabilityStudy.Files.Tests.Messages;
using StabilityStudy.Files.Tests.OwnTables;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>
/// The same results exported in random dialects: what is suggested reads them back to the same canonical data, or a person is asked and
/// check stops until then. Never other numbers.
/// </summary>
public sealed class SuggestionRoundTripTests
{
    private const int Usual = 120;
    private static readonly DateTimeOffset s_asOf = new(
        2026,
        3,
        27,
        12,
        0,
        0,
        TimeSpan.FromHours(1)
    );
    private static readonly int s_count = LongProof.Setting("SUGGESTED_EXPORTS", Usual);

    [Fact]
    public void A_damaged_file_is_asked_about_or_left_aside()
    {
        var tests = DeliveredData.Shifted(11);
        var plain = DeliveredData.PlainOf(tests);
        (string Name, byte[] Bytes)[] sound =
        [
            .. Enumerable
                .Range(0, 40)
                .Select(seed => RandomExport.Of(seed, tests))
                .Select(export => (export.Name, export.Bytes)),
            .. Enumerable.Repeat(("book.xlsx", MisreadingCases.GoodBook()), 20),
            .. Enumerable
                .Range(0, 20)
                .Select(seed =>
                    (
                        "results.hl7",
                        new ResultMessages(seed).File(
                            tests.Select(test => new ResultMessages.Sent
                            {
                                Tube = $"{test.Code}-{test.Tube}",
                                Code = "APTT",
                                Result = test.Result,
                                Unit = "s",
                                Tested = new(test.Tested, TimeSpan.FromHours(1)),
                            })
                        )
                    )
                ),
        ];
        var random = new Random(20261130);
        for (var i = 0; i < 4 * s_count; i++)
        {
            var (name, good) = sound[i % sound.Length];
            byte[] bytes = [.. good];
            for (var changes = random.Next(1, 8); changes > 0; changes--)
            {
                bytes[random.Next(bytes.Length)] =
                    random.Next(2) == 0
                        ? (byte)random.Next(256)
                        : ";,\t|\"\n\r:.-/ 0h("u8[random.Next(15)];
            }

            var files = new StudyBytes(plain.Files.Remove("results.csv")).With(
                name,
                random.Next(8) == 0 ? bytes[..random.Next(bytes.Length)] : bytes
            );
            Assert.True(StudySuggestion.Of(files, s_asOf).TryGet(out var suggestion));
            Assert.NotNull(suggestion.WrittenInto(files.Files["study.toml"]));
            Assert.DoesNotContain(ResultMessages.Mark, suggestion.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(11)]
    public void An_export_is_read_to_the_same_data_or_asked_about(int daysLater)
    {
        var tests = DeliveredData.Shifted(daysLater);
        var plain = DeliveredData.PlainOf(tests);
        var expected = Delivered.Results(CanonicalTests.Read(plain));
        var (read, clear) = (0, 0);
        for (var seed = 0; seed < s_count; seed++)
        {
            var export = RandomExport.Of(seed, tests);
            var files = new StudyBytes(plain.Files.Remove("results.csv")).With(
                export.Name,
                export.Bytes
            );
            Assert.True(
                StudySuggestion.Of(files, s_asOf).TryGet(out var suggestion),
                export.Description
            );
            Assert.Contains(suggestion.Tables, table => table.Section == "results");
            var written = suggestion.WrittenInto(files.Files["study.toml"]);
            Assert.NotNull(written);
            Assert.DoesNotContain("Mustermann", suggestion.Text, StringComparison.Ordinal);
            var outcome = StudyIntake.Read(files.With("study.toml", written.Value));
            if (outcome.TryGet(out var study))
            {
                read++;
                Assert.True(
                    Delivered.Results(study) == expected,
                    export.Description + suggestion.Text
                );
                Assert.False(export.IsAmbiguous, export.Description + suggestion.Text);
            }
            else
            {
                Assert.Contains(outcome.Queries, query => query.Severity == Severity.Stop);
                Assert.True(
                    !suggestion.Questions.IsEmpty,
                    string.Join(
                        '\n',
                        outcome.Queries.Take(5).Select(query => $"{query.Source} {query.Message}")
                    )
                        + '\n'
                        + export.Description
                        + suggestion.Text
                );
            }

            clear += export.IsAmbiguous ? 0 : 1;
        }

        // What is clear is asked about in no more than a few.
        Assert.True(read >= 0.9 * clear, $"{read} of {clear} that are clear");
    }
}
