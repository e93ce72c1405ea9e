using System.Text.RegularExpressions;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>Times of collection and receipt from messages, and whose clock each time was.</summary>
public sealed partial class SentTimeTests
{
    private const string Example = "aptt-room-temperature";
    private const string FromMessages = "\n[read.specimens]\ntimes_from_messages = true\n";

    [Fact]
    public void Tubes_without_times_take_those_of_messages()
    {
        var expected = CanonicalTests.Read(SentExample.Plain(Example)).Canonical.Data[0];
        for (var seed = 1; seed <= 5; seed++)
        {
            var sent = SentExample.AsMessages(Example, seed);
            var found = CanonicalTests
                .Read(WithFacts(WithSpecimens(sent, (_, _) => ""), FromMessages))
                .Canonical.Data[0];

            // Tubes without a result have no message, and keep the times of their rows.
            Assert.Equal(expected.Sha256, found.Sha256);
        }
    }

    [Fact]
    public void Times_that_differ_are_a_query()
    {
        var sent = SentExample.AsMessages(Example, 1);
        var queries = StudyIntake
            .Read(
                WithFacts(
                    WithSpecimens(
                        sent,
                        (_, text) =>
                            text.Replace("T07:05:00", "T07:04:00", StringComparison.Ordinal)
                    ),
                    FromMessages
                )
            )
            .Queries;

        var query = queries.First(query => query.Code == "sent-times-differ");
        Assert.Contains(
            "T07:04:00-05:00, and the messages have",
            query.Message,
            StringComparison.Ordinal
        );
        Assert.Equal("specimens.csv", query.Source.File);
    }

    [Fact]
    public void Messages_that_differ_about_a_tube_are_a_query()
    {
        var files = MessageCases.File(
            GoodStudy.Text(MessageCases.Good, "results.hl7")
                + GoodStudy
                    .Text(MessageCases.Good, "results.hl7")
                    .Replace("20260302070500", "20260302070600", StringComparison.Ordinal),
            MessageCases.Settings + FromMessages
        );

        var query = Assert.Single(
            StudyIntake.Read(files).Queries,
            query => query.Code == "sent-times-differ"
        );
        Assert.Equal("results.hl7", query.Source.File);
        Assert.Equal("collected_at", query.Source.Column);
    }

    [Theory]
    [InlineData("|20260302070500|", "|20260302|", "not-a-time", "OBR-7")]
    [InlineData(
        "20260302070500+0100\r",
        "20260302071500+0100\r",
        "field-not-clear",
        "two times of one thing"
    )]
    [InlineData(
        "20260302070500+0100\r",
        "20260302070500^20260302071000\r",
        "field-not-clear",
        "span of time"
    )]
    public void A_time_of_collection_that_is_not_clear_is_a_query(
        string from,
        string to,
        string code,
        string says
    )
    {
        var files = MessageCases.With(from, to, MessageCases.Settings + FromMessages);

        var query = StudyIntake.Read(files).Queries.First(query => query.Code == code);
        Assert.Equal(Severity.Stop, query.Severity);
        Assert.Contains(says, query.Message, StringComparison.Ordinal);
        Assert.Equal(("results.hl7", "collected_at"), (query.Source.File, query.Source.Column));
    }

    [Fact]
    public void Times_from_messages_without_messages_are_a_query() =>
        Assert.Contains(
            StudyIntake.Read(WithFacts(SentExample.Plain(Example), FromMessages)).Queries,
            query => query.Code == "setting-without-use"
        );

    [Fact]
    public void The_facts_say_from_which_field_times_come()
    {
        var study = CanonicalTests.Read(
            WithFacts(SentExample.AsMessages(Example, 2), FromMessages)
        );

        Assert.Equal(
            [
                "collected_at SPM-17.1, else OBR-7",
                "received_at SPM-18, else OBR-14",
                "tested_at OBX-19",
            ],
            study.Inputs.Facts.SentTimes.Select(time => $"{time.Column} {time.Field}")
        );
        Assert.All(study.Inputs.Facts.SentTimes, time => Assert.Equal(0, time.WithoutInstrument));
        Assert.Empty(CanonicalTests.Read(SentExample.Plain(Example)).Inputs.Facts.SentTimes);
    }

    [Fact]
    public void Results_that_name_no_instrument_are_counted() =>
        Assert.Equal(
            1,
            Assert
                .Single(CanonicalTests.Read(MessageCases.Good).Inputs.Facts.SentTimes)
                .WithoutInstrument
        );

    /// <summary>The tubes with other times of collection and receipt, where there is a result of the tube.</summary>
    private static StudyBytes WithSpecimens(StudyBytes files, Func<string, string, string> other)
    {
        var tested = Tested()
            .Matches(GoodStudy.Text(SentExample.Plain(Example), "results.csv"))
            .Select(match => match.Groups["tube"].Value)
            .ToHashSet();
        var lines = GoodStudy.Text(files, "specimens.csv").TrimEnd('\n').Split('\n');
        return files.With(
            "specimens.csv",
            GoodStudy.Utf8(
                string.Concat(
                    lines.Select(line =>
                    {
                        var fields = line.Split(',');
                        if (tested.Contains(fields[1]))
                        {
                            fields[6] = other("collected_at", fields[6]);
                            fields[7] = other("received_at", fields[7]);
                        }

                        return string.Join(',', fields) + "\n";
                    })
                )
            )
        );
    }

    private static StudyBytes WithFacts(StudyBytes files, string more) =>
        files.With(
            StudyBytes.FactsName,
            GoodStudy.Utf8(GoodStudy.Text(files, StudyBytes.FactsName) + more)
        );

    [GeneratedRegex("^[^,]+,(?<tube>[^,]+),", RegexOptions.Multiline, 1000)]
    private static partial Regex Tested();
}
