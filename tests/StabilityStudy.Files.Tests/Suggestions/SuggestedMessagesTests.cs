using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Tests.Messages;
using StabilityStudy.Files.Tests.OwnTables;
using static StabilityStudy.Files.Tests.Suggestions.Delivered;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>What is suggested for files of result messages reads them to the same data, or a person is asked and check stops. No person of a message is shown.</summary>
public sealed class SuggestedMessagesTests
{
    private static ResultMessages.Sent SentOf(DeliveredData.Test test) =>
        new()
        {
            Tube = $"{test.Code}-{test.Tube}",
            Order = $"A{test.Specimen:0000}",
            Code = "APTT",
            Result = test.Result,
            Unit = "s",
            Flag = test.Specimen % 2 == 0 ? "H" : "",
            Tested = At(test.Tested),
            Collected = At(test.Collected),
        };

    private static DateTimeOffset At(DateTime local) => new(local, TimeSpan.FromHours(1));

    private static StudyBytes Files(int seed, Func<DeliveredData.Test, ResultMessages.Sent> send) =>
        With("results.hl7", new ResultMessages(seed).File(Delivered.Tests.Select(send)));

    [Fact]
    public void Messages_of_every_way_of_writing_are_read_to_the_same_data()
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var files = Files(seed, SentOf);
            var suggestion = Suggest(files);

            Assert.Empty(suggestion.Questions);
            RequireNobody(files);
            Assert.Equal(Numbers(Plain), Numbers(Written(files)));
        }
    }

    [Fact]
    public void Specimen_and_tube_in_two_fields()
    {
        var files = Files(
            3,
            test => SentOf(test) with { Order = test.Code, Tube = test.Tube.ToString() }
        );
        var suggestion = Suggest(files);

        Assert.Empty(suggestion.Questions);
        Assert.Contains("specimen = \"filler_order\"", suggestion.Text, StringComparison.Ordinal);
        Assert.Contains("tube = \"specimen_id\"", suggestion.Text, StringComparison.Ordinal);
        Assert.Equal(Numbers(Plain), Numbers(Written(files)));
    }

    [Fact]
    public void A_status_that_is_not_final_is_asked_about()
    {
        var files = Files(4, test => SentOf(test) with { Status = test.Specimen == 3 ? "P" : "F" });
        var suggestion = Suggest(files);

        Assert.Contains(
            suggestion.Questions,
            question => question.Text.Contains("P (preliminary)", StringComparison.Ordinal)
        );
        RequireStop(Written(files));
        Assert.Equal(Numbers(Plain), Numbers(Written(files, "result_status = { P = \"result\" }")));
    }

    [Fact]
    public void Without_a_time_of_analysis_the_time_of_observation_is_asked_about()
    {
        var files = Files(
            5,
            test => SentOf(test) with { Tested = null, Collected = At(test.Tested) }
        );

        Assert.Contains(
            Suggest(files).Questions,
            question =>
                question.Text.Contains("states no time of testing", StringComparison.Ordinal)
        );
        RequireStop(Written(files));
    }

    [Fact]
    public void An_unknown_flag_and_another_unit_are_asked_about()
    {
        var files = Files(6, test => SentOf(test) with { Flag = "E7", Unit = "ms" });
        var questions = string.Join(
            '\n',
            Suggest(files).Questions.Select(question => question.Text)
        );

        Assert.Contains("What does flag E7", questions, StringComparison.Ordinal);
        Assert.Contains("converted to s", questions, StringComparison.Ordinal);
        RequireStop(Written(files));
    }

    [Fact]
    public void Messages_without_results_are_left_aside()
    {
        var suggestion = Suggest(
            With(
                "results.hl7",
                GoodStudy.Utf8("MSH|^~\\&|A|B|C|D|202603130800||ADT^A01|1|P|2.5.1\r")
            )
        );

        Assert.Contains(suggestion.Files, file => file is { Name: "results.hl7", Kind: "" });
    }

    private static void RequireNobody(StudyBytes files)
    {
        var said = System.Text.Json.JsonSerializer.Serialize(Suggest(files));
        Assert.DoesNotContain(ResultMessages.Mark, said, StringComparison.Ordinal);
        Assert.DoesNotContain(ResultMessages.Beside, said, StringComparison.Ordinal);
    }

    // Flags and times with an offset are more than the plain file has.
    private static IEnumerable<string> Numbers(StudyBytes files) =>
        CanonicalTests
            .Read(files)
            .Inputs.Results.OrderBy(row => row.Specimen, StringComparer.Ordinal)
            .ThenBy(row => row.Tube, StringComparer.Ordinal)
            .Select(row =>
                $"{row.Specimen} {row.Tube} {row.Analyte} {row.Occasion} {row.TestedAt} {row.Result.Text} {row.Unit}"
            );
}
