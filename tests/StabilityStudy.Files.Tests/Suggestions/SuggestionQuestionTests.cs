using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Suggestions;
using StabilityStudy.Files.Tests.OwnTables;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;
using static StabilityStudy.Files.Tests.Suggestions.Delivered;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>Where two readings are possible a person is asked, and check stops until the answer stands in study.toml.</summary>
public sealed class SuggestionQuestionTests
{
    private const string Header = "Sample,Tube,Test,Result,Unit,Tested";

    private static string Row(DeliveredData.Test test, string result, string unit = "s") =>
        $"{test.Code},{test.Tube},aPTT,\"{result}\",{unit},{Time(test, "yyyy-MM-dd HH:mm")}";

    private static StudyBytes Files(Func<DeliveredData.Test, string> result, string unit = "s") =>
        With(Header, test => Row(test, result(test), unit));

    /// <summary>Delivered files, and words of the question that each must raise.</summary>
    public static TheoryData<string, StudyBytes, string> Doubtful =>
        new()
        {
            {
                "a comma may mark thousands",
                Files(test => $"1,{(int)(test.Specimen * 7 + 100)}"),
                "\"1,107\" in export.csv 1.107, or 1107?"
            },
            {
                "a point may mark thousands",
                Files(test => $"1.{(int)(test.Specimen * 7 + 100)}"),
                "\"1.107\" in export.csv 1.107, or 1107?"
            },
            {
                "no unit",
                With(
                    "Sample,Tube,Test,Result,Tested",
                    test =>
                        $"{test.Code},{test.Tube},aPTT,{test.Result},{Time(test, "yyyy-MM-dd HH:mm")}"
                ),
                "In which unit"
            },
            { "a unit of another size", Files(test => test.Result, "ms"), "converted to s" },
            {
                "a unit of another kind",
                Files(test => test.Result, "mg/dL"),
                "What is the unit \"mg/dL\""
            },
            {
                "a unit that nobody knows",
                Files(test => test.Result, "xyz"),
                "What is the unit \"xyz\""
            },
            {
                "two columns of results",
                With(
                    "Sample,Tube,Test,Result,Value,Unit,Tested",
                    test =>
                        $"{test.Code},{test.Tube},aPTT,{test.Result},{test.Result.Replace('3', '4')},s,{Time(test, "yyyy-MM-dd HH:mm")}"
                ),
                "holds the results: \"Result\", \"Value\""
            },
            {
                "two times of testing",
                With(
                    "Sample,Tube,Test,Result,Unit,Measured at,Analysis time",
                    test =>
                        $"{test.Code},{test.Tube},aPTT,{test.Result},s,{Time(test, "yyyy-MM-dd HH:mm")},{Time(test, "yyyy-MM-dd HH:mm")}"
                ),
                "Which columns of export.csv are tested_at"
            },
            {
                "only the time of release",
                With(
                    "Sample,Tube,Test,Result,Unit,Verified at",
                    test =>
                        $"{test.Code},{test.Tube},aPTT,{test.Result},s,{Time(test, "yyyy-MM-dd HH:mm")}"
                ),
                "has no time of testing"
            },
            {
                "a day without a time",
                With(
                    "Sample,Tube,Test,Result,Unit,Test date",
                    test =>
                        $"{test.Code},{test.Tube},aPTT,{test.Result},s,{Time(test, "yyyy-MM-dd")}"
                ),
                "no time of day"
            },
            {
                "a clock of twelve hours",
                With(
                    Header,
                    test =>
                        Row(test, test.Result)
                            .Replace(
                                Time(test, "yyyy-MM-dd HH:mm"),
                                Time(test, "yyyy-MM-dd hh:mm"),
                                StringComparison.Ordinal
                            )
                ),
                "clock of 12 hours"
            },
            {
                "the clock of another zone",
                With(
                    Header,
                    test =>
                        Row(test, test.Result)
                            .Replace(
                                Time(test, "yyyy-MM-dd HH:mm"),
                                test.Tested.AddHours(-9)
                                    .ToString(
                                        "yyyy-MM-dd HH:mm",
                                        System.Globalization.CultureInfo.InvariantCulture
                                    ),
                                StringComparison.Ordinal
                            )
                ),
                "time_zone"
            },
            {
                "two tests for one analyte",
                With(
                    Header,
                    test =>
                        Row(test, test.Result)
                            .Replace(
                                "aPTT",
                                test.Specimen % 2 == 0 ? "APTT-FS" : "APTT-SP",
                                StringComparison.Ordinal
                            )
                ),
                "Which analyte of the protocol is \"APTT-SP\""
            },
            {
                "a test that is not in the protocol",
                With(
                    Header,
                    test =>
                        Row(test, test.Result).Replace("aPTT", "Quick", StringComparison.Ordinal)
                ),
                "Which analyte of the protocol is \"Quick\""
            },
            {
                "another quantity of the analyte",
                With(
                    Header,
                    test =>
                        Row(test, test.Result)
                            .Replace("aPTT", "aPTT ratio", StringComparison.Ordinal)
                ),
                "Which analyte of the protocol is \"aPTT ratio\""
            },
            {
                "a word in place of a result",
                Files(test => test.Result == "CLOT" ? "see remark" : test.Result),
                "What does \"see remark\""
            },
            {
                "codes that are record numbers",
                With(
                    "Sample,Test,Result,Unit,Tested",
                    test =>
                        $"12345{test.Specimen:000}-{test.Tube},aPTT,{test.Result},s,{Time(test, "yyyy-MM-dd HH:mm")}"
                ),
                "who a person is"
            },
        };

    [Fact]
    public void A_file_of_pairs_without_a_unit_does_not_take_that_of_the_protocol_unseen()
    {
        var files = new Intake.StudyBytes(
            Plain.Files.Remove("results.csv").Remove("specimens.csv")
        ).With(
            "pairs.csv",
            GoodStudy.Utf8(
                "Sample,Collected,aPTT baseline,Time baseline,aPTT 6 h,Time 6 h,Spun 6 h\n"
                    + string.Concat(
                        Delivered
                            .Tests.GroupBy(test => test.Specimen)
                            .Select(tests => tests.ToArray())
                            .Select(tests =>
                                $"{tests[0].Code},{tests[0].Collected:yyyy-MM-dd HH:mm},{tests[0].Result},{Time(tests[0], "yyyy-MM-dd HH:mm")},{tests[1].Result},{Time(tests[1], "yyyy-MM-dd HH:mm")},{tests[1].Spun:yyyy-MM-dd HH:mm}\n"
                            )
                    )
            )
        );

        Assert.Contains(
            Suggest(files).Questions,
            question => question.Text.Contains("In which unit", StringComparison.Ordinal)
        );
        var written = Written(files);
        RequireStop(written);
        Assert.NotEmpty(
            CanonicalTests
                .Read(
                    written.With(
                        "study.toml",
                        GoodStudy.Utf8(
                            GoodStudy
                                .Text(written, "study.toml")
                                .Replace("unit = \"?\"", "unit = \"s\"", StringComparison.Ordinal)
                        )
                    )
                )
                .Inputs.Results
        );
    }

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void A_doubt_is_a_question_and_check_stops(string name, StudyBytes files, string words)
    {
        Assert.NotEmpty(name);
        var suggestion = Suggest(files);

        Assert.Contains(
            suggestion.Questions,
            question => question.Text.Contains(words, StringComparison.Ordinal)
        );
        RequireStop(Written(files));
    }

    [Fact]
    public void Day_and_month_are_asked_about_where_both_fit_though_one_of_them_lies_in_the_future()
    {
        var early = DeliveredData.Shifted(0);
        var plain = DeliveredData.PlainOf(early);
        var text =
            "Sample ID,Test,Result,Unit,Tested\n"
            + string.Concat(
                early.Select(test =>
                    $"{test.Code}-{test.Tube},aPTT,{test.Result},s,{Time(test, "dd.MM.yy HH:mm")}\n"
                )
            );
        var files = new StudyBytes(plain.Files.Remove("results.csv")).With(
            "a.csv",
            GoodStudy.Utf8(text)
        );

        var suggestion = Suggest(files);

        // Those of 3 March are the same in both readings.
        Assert.Equal(
            "day.month or month.day in a.csv? Day.month fits the collection times of 36 rows, month.day fits the collection times of 6 rows. Uncomment the line that is right.",
            Assert.Single(suggestion.Questions).Text
        );
        Assert.Equal(
            ["? as day.month. As month.day line 32 would be 2026-07-03, after today."],
            suggestion.Files[0].Rows!.Remarks
        );
        RequireStop(Written(files));
        Assert.Equal(
            Results(CanonicalTests.Read(plain)),
            Results(CanonicalTests.Read(Written(files, "date_format = \"dd.MM.yy HH:mm\"")))
        );
    }

    [Fact]
    public void One_mistyped_day_does_not_settle_what_day_and_month_are()
    {
        var early = DeliveredData.Shifted(0);
        var plain = DeliveredData.PlainOf(early);
        var text =
            "Sample ID,Test,Result,Unit,Tested\n"
            + string.Concat(
                early.Select(
                    (test, i) =>
                        $"{test.Code}-{test.Tube},aPTT,{test.Result},s,{(i == 7 ? "03.13.2026 07:00" : Time(test, "dd.MM.yyyy HH:mm"))}\n"
                )
            );
        var files = new StudyBytes(plain.Files.Remove("results.csv")).With(
            "a.csv",
            GoodStudy.Utf8(text)
        );

        Assert.Contains(
            Suggest(files).Questions,
            question => question.Text.StartsWith("day.month or month.day", StringComparison.Ordinal)
        );
        RequireStop(Written(files));
    }

    [Fact]
    public void A_number_that_is_shown_shorter_than_it_is_stored_is_asked_about()
    {
        var book = new WorkbookBytes()
            .Sheet(
                "Results",
                [
                    WorkbookBytes.Row.Of("Sample", "Tube", "Result (s)", "Tested"),
                    .. Delivered.Tests.Select(test => new WorkbookBytes.Row(
                        Cell.Text(test.Code),
                        Cell.Text(test.Tube.ToString()),
                        test.Result == "CLOT"
                            ? Cell.Text(test.Result)
                            : Cell.Number(test.Result + "49", "0.0"),
                        Cell.Time(test.Tested)
                    )),
                ]
            )
            .ToArray();
        var files = With("book.xlsx", book);

        Assert.Contains(
            Suggest(files).Questions,
            question => question.Text.Contains("Which was reported?", StringComparison.Ordinal)
        );
        RequireStop(Written(files));
        RequireSame(Written(files, "numbers = \"as shown\""));
    }

    [Fact]
    public void What_study_toml_states_goes_before_what_is_guessed()
    {
        var files = Files(test => test.Result);
        var stated = files.With(
            "study.toml",
            GoodStudy.Utf8(
                DeliveredData.Facts(
                    "\n# kept\n[read.results]\nfile = \"export.csv\"\ndate_format = \"yyyy-dd-MM HH:mm\" # mine\n[read.results.columns]\nresult = \"Result\"\n[read.results.constants]\nrun = \"R1\"\n"
                )
            )
        );

        var suggestion = Suggest(stated);

        Assert.Contains(
            "date_format = \"yyyy-dd-MM HH:mm\"",
            suggestion.Text,
            StringComparison.Ordinal
        );
        Assert.Contains("run = \"R1\"", suggestion.Text, StringComparison.Ordinal);
        Assert.Contains(
            suggestion.Files[0].Settings,
            setting => setting is { Name: "dates", Why: "stated in study.toml" }
        );
        var written = GoodStudy.Text(Written(stated), "study.toml");
        Assert.Contains("# kept\n", written, StringComparison.Ordinal);
        Assert.Equal(2, written.Split("[read.results]").Length);
    }

    [Fact]
    public void Writing_twice_changes_nothing_more_and_comments_stay()
    {
        var files = Files(test => test.Result, "ms");
        var once = Written(files);
        var twice = Written(once);

        Assert.Equal(GoodStudy.Text(once, "study.toml"), GoodStudy.Text(twice, "study.toml"));
        Assert.StartsWith(
            GoodStudy.Text(files, "study.toml").TrimEnd(),
            GoodStudy.Text(once, "study.toml"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_table_in_braces_is_left_to_a_person()
    {
        var files = Files(test => test.Result, "ms");
        var facts = GoodStudy.Utf8(
            DeliveredData.Facts("\n[read]\nresults = { file = \"export.csv\" }\n")
        );

        Assert.Null(Suggest(files.With("study.toml", facts)).WrittenInto(facts));
    }

    [Fact]
    public void A_file_that_is_read_now_is_not_replaced_unasked()
    {
        var files = Plain.With(
            "export.csv",
            GoodStudy.Utf8(Text(Header, test => Row(test, test.Result)))
        );

        Assert.Contains(
            Suggest(files).Questions,
            question =>
                question.Text.StartsWith(
                    "results.csv holds results that are read now.",
                    StringComparison.Ordinal
                )
        );
        RequireStop(Written(files));
        RequireSame(Written(files, "file = \"export.csv\""));
    }

    [Theory]
    [InlineData("lis.hl7", "no message holds a result")]
    [InlineData("lis.txt", "let its name end in .hl7")]
    public void Messages_are_no_table(string name, string words)
    {
        var suggestion = Suggest(
            With(name, GoodStudy.Utf8("MSH|^~\\&|LAB|X|||20260313||ORU^R01|1|P|2.5\r"))
        );

        Assert.Contains(
            words,
            Assert.Single(suggestion.Files).Settings[0].Why,
            StringComparison.Ordinal
        );
        Assert.Empty(suggestion.Tables);
    }

    [Fact]
    public void Files_that_are_read_as_they_are_need_no_suggestion()
    {
        var suggestion = Suggest(Plain);

        Assert.Empty(suggestion.Files);
        Assert.Empty(suggestion.Tables);
    }

    [Fact]
    public void A_damaged_file_is_looked_at_without_an_error()
    {
        var random = new Random(20260401);
        var good = RandomExport.Of(3, Delivered.Tests).Bytes;
        for (var i = 0; i < LongProof.Setting("SUGGESTED_EXPORTS", 120); i++)
        {
            byte[] bytes = [.. good];
            for (var change = random.Next(1, 12); change > 0; change--)
            {
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            }

            var files = With(
                "export.csv",
                random.Next(4) == 0 ? bytes[..random.Next(bytes.Length)] : bytes
            );
            Assert.True(
                StudySuggestion.Of(files, DateTimeOffset.UnixEpoch.AddYears(56)).TryGet(out _)
            );
        }
    }
}
