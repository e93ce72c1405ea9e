using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.Messages;

/// <summary>What single fields of a message are read as: each as the same row of a table.</summary>
public sealed class ReadMessageTests
{
    private const string Usual = "N001,A,aPTT,baseline,1,2026-03-02T07:45:00+01:00,31.4,s,,,,,,,";

    public static TheoryData<string, string, string> Values =>
        new()
        {
            { "NM||31.4", "NM||+31.4", "31.4,s" },
            { "NM||31.4", "SN||^31.4", "31.4,s" },
            { "NM||31.4", "SN||=^31.4", "31.4,s" },
            { "NM||31.4", "SN||>^180", ">180,s" },
            { "NM||31.4", "SN||<^20.0", "<20.0,s" },
            { "NM||31.4", "ST||>180", ">180,s" },
            { "NM||31.4", "ST||clot", "clot,s" },
            { "NM||31.4", "CWE||77^FIBRIN^L", "FIBRIN,s" },
            { "NM||31.4", "CE||QNS", "QNS,s" },
            { "NM||31.4", "NM||\"\"", ",s" },
            { "NM||31.4", "ST||3\\X31\\.4", "31.4,s" },
            { "NM||31.4", "ST||\\H\\31.4\\N\\", "31.4,s" },
        };

    [Theory]
    [MemberData(nameof(Values))]
    public void A_value_is_read_by_its_type(string from, string to, string read) =>
        Assert.Equal(
            Usual.Replace("31.4,s", read, StringComparison.Ordinal),
            Row(
                MessageCases.With(
                    $"{from[..2]}|14979-9^aPTT^LN^APTT^aPTT^L|{from[3..]}",
                    to.Replace("||", "|14979-9^aPTT^LN^APTT^aPTT^L||", StringComparison.Ordinal)
                )
            )
        );

    [Theory]
    [InlineData("F|", "", "", "NA")]
    [InlineData("X|", "", "", "NA")]
    [InlineData("X|", "", "RC", "CLOT")]
    [InlineData("F|", "", "RH", "HEMOLYSIS")]
    [InlineData("F|", "", "QS", "QNS")]
    [InlineData("F|", "", "RI", "NA")]
    [InlineData("X|", "FIBRIN", "RC", "FIBRIN")]
    public void A_result_that_is_not_there_is_missing_for_the_stated_reason(
        string status,
        string value,
        string reason,
        string read
    )
    {
        var row = Row(
            MessageCases
                .With("|F|", $"|{status}")
                .Then("NM|14979", "ST|14979")
                .Then("||31.4|", $"||{value}|")
                .Then(
                    "SPM|1|N001-A^L-1|||||||||||||||20260302070500+0100",
                    $"SPM|1|N001-A^L-1|||||||||||||||20260302070500+0100||||{reason}"
                )
        );

        // A final result without value and reason is read as an empty field of a table is.
        Assert.Equal(
            Usual.Replace(
                "31.4,s",
                (status, value, reason) == ("F|", "", "") ? ",s" : $"{read},s",
                StringComparison.Ordinal
            ),
            row
        );
    }

    [Theory]
    [InlineData("20260302074500+0100", "202603020745", "2026-03-02T07:45:00+01:00")]
    [InlineData("20260302074500+0100", "20260302074530.9999", "2026-03-02T07:45:30+01:00")]
    [InlineData("20260302074500+0100", "202603020645+0000", "2026-03-02T06:45:00+00:00")]
    [InlineData("20260302074500+0100", "202603020145-0500", "2026-03-02T01:45:00-05:00")]
    public void A_time_is_read_with_its_offset_or_in_the_zone_of_the_study(
        string from,
        string to,
        string read
    ) =>
        Assert.Equal(
            Usual.Replace("2026-03-02T07:45:00+01:00", read, StringComparison.Ordinal),
            Row(MessageCases.With(from, to))
        );

    [Fact]
    public void A_time_without_an_offset_has_that_of_its_message()
    {
        // HL7 Version 2.5.1, chapter 2, MSH-7: an offset that is stated there holds for the message.
        var settings = MessageCases.Settings.Replace(
            "[read.results]",
            "[read.results]\ntime_zone = \"America/New_York\"",
            StringComparison.Ordinal
        );

        Assert.Equal(
            Usual.Replace("07:45:00+01:00", "02:45:00-05:00", StringComparison.Ordinal),
            Row(
                MessageCases
                    .With("|20260302||", "|20260302120000-0500||", settings)
                    .Then("20260302074500+0100", "202603020245")
            )
        );
    }

    [Theory]
    [InlineData("8859/1", 28591)]
    [InlineData("8859/15", 28605)]
    [InlineData("UNICODE UTF-8", 65001)]
    [InlineData("", 65001)]
    public void Characters_are_read_by_the_set_that_the_message_states(string name, int page)
    {
        var text = GoodStudy.Text(
            MessageCases.With("2.5.1\r", $"2.5.1||||||{name}\r").Then("|s||", "|s||größer"),
            "results.hl7"
        );
        var encoding =
            page == 28605
                ? CodePagesEncodingProvider.Instance.GetEncoding(page)!
                : Encoding.GetEncoding(page);

        Assert.Equal(
            Usual[..^1] + "größer,",
            Row(MessageCases.File(encoding.GetBytes(text), Flags("größer")))
        );
    }

    [Fact]
    public void A_file_of_UTF_16_is_read_where_it_is_stated()
    {
        var text = GoodStudy.Text(MessageCases.With("|s||", "|s||größer"), "results.hl7");

        Assert.Equal(
            Usual[..^1] + "größer,",
            Row(
                MessageCases.File(
                    Encoding.Unicode.GetBytes(text),
                    Flags("größer")
                        .Replace(
                            "[read.results]",
                            "[read.results]\nencoding = \"utf-16\"",
                            StringComparison.Ordinal
                        )
                )
            )
        );
    }

    [Fact]
    public void A_reject_reason_can_be_read_as_a_flag() =>
        Assert.Equal(
            Usual[..^1] + "H RH,",
            Row(
                MessageCases
                    .With(
                        "|s||",
                        "|s||H",
                        Flags("H RH")
                            .Replace(
                                "{ tube =",
                                "{ flag = [\"flag\", \"reject_reason\"], tube =",
                                StringComparison.Ordinal
                            )
                    )
                    .Then("20260302070500+0100\r", "20260302070500+0100||||RH^hemolysis\r")
            )
        );

    [Fact]
    public void A_retracted_result_is_none_where_study_toml_says_so() =>
        Assert.Equal(
            Usual.Replace("31.4,s", "NA,s", StringComparison.Ordinal),
            Row(
                MessageCases.With(
                    "|F|",
                    "|W|",
                    MessageCases.Settings.Replace(
                        "[read.results]",
                        "[read.results]\nresult_status = { W = \"no result\" }",
                        StringComparison.Ordinal
                    )
                )
            )
        );

    [Fact]
    public void Words_of_several_parts_are_read_where_study_toml_knows_them() =>
        Assert.Equal(
            Usual.Replace("31.4,s", "CLOT,s", StringComparison.Ordinal),
            Row(
                MessageCases
                    .With(
                        "NM|",
                        "ST|",
                        MessageCases.Settings
                            + "[read.results.values.result]\n\"clot in it\" = \"CLOT\"\n"
                    )
                    .Then("|31.4|", "|clot in it|")
            )
        );

    [Fact]
    public void An_observation_behind_a_specimen_belongs_to_it()
    {
        var text = GoodStudy.Text(MessageCases.Good, "results.hl7");
        var parts = text.Split('\r', StringSplitOptions.RemoveEmptyEntries);
        var result = parts.Single(part => part.StartsWith("OBX", StringComparison.Ordinal));
        var specimen = parts.Single(part => part.StartsWith("SPM", StringComparison.Ordinal));
        var others = parts.Where(part => part != result && part != specimen);
        var second = specimen.Replace("N001-A", "N002-A", StringComparison.Ordinal);

        // The order of the specimen, its results, the next specimen, its results.
        Assert.Equal(
            [Usual, Usual.Replace("N001", "N002", StringComparison.Ordinal)],
            Rows(
                MessageCases.File(
                    string.Join('\r', [.. others, specimen, result, second, result, ""])
                )
            )
        );
    }

    private static string Flags(string flag) =>
        MessageCases.Settings + $"[read.results.values.flag]\n\"{flag}\" = \"harmless\"\n";

    private static string Row(StudyBytes files) => Assert.Single(Rows(files));

    private static string[] Rows(StudyBytes files)
    {
        var outcome = StudyIntake.Read(files);
        Assert.True(
            outcome.TryGet(out var study),
            string.Join(
                '\n',
                outcome
                    .Queries.Where(query => query.Severity == Severity.Stop)
                    .Select(query => $"{query.Code} {query.Source}: {query.Message}")
            )
        );
        return
        [
            .. Encoding
                .UTF8.GetString(study.Canonical.Data[1].Bytes.Span)
                .TrimEnd('\n')
                .Split('\n')
                .Skip(1)
                .Select(row => row[..row.LastIndexOf(',')]),
        ];
    }
}
