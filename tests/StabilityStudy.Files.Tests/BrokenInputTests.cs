using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Tests;

public sealed class BrokenInputTests
{
    public static TheoryData<BrokenInput> Cases =>
        [
            .. BrokenTomlCases.All,
            .. LaxProtocolCases.All,
            .. BrokenCsvCases.All,
            .. HandlingCases.All,
        ];

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void A_broken_study_gives_exactly_the_query_that_names_the_fault(BrokenInput broken)
    {
        var line = broken.WholeFile
            ? (int?)null
            : GoodStudy.LineOf(broken.File, broken.From) + broken.LinesBelow;
        var file = broken.OtherFile ?? broken.File;

        var queries = StudyIntake
            .Read(GoodStudy.Edited(broken.File, broken.From, broken.To))
            .Queries;

        var found = queries.FirstOrDefault(query =>
            query.Code == broken.Code && query.Source.Column == broken.Column
        );
        Assert.True(
            found is not null,
            $"{broken}: found {string.Join(" | ", queries.Select(q => $"{q.Code} {q.Source}: {q.Message}"))}"
        );
        Assert.Equal(broken.Severity, found.Severity);
        Assert.Equal(file, found.Source.File);
        if (broken.OtherFile is null)
        {
            Assert.Equal(line, found.Source.Line);
        }

        Assert.Contains(broken.Says, found.Message + " " + found.Action, StringComparison.Ordinal);
        Assert.Empty(queries.Select(q => q.Code).Distinct().Except([broken.Code, .. broken.Along]));
    }

    [Theory]
    [InlineData("version = \"\\")]
    [InlineData("version = \"\\u")]
    [InlineData("version = \"\\U0000D8")]
    [InlineData("version = \"\"\"\\u0")]
    [InlineData("\"ver\\")]
    public void A_file_that_ends_within_an_escape_is_asked_about(string last)
    {
        foreach (var file in (string[])["protocol.toml", "study.toml"])
        {
            var text = "format = 1\ncode = \"A\"\n" + last;

            var query = Assert.Single(
                StudyIntake.Read(GoodStudy.Bytes.With(file, GoodStudy.Utf8(text))).Queries,
                query => query.Source.File == file
            );

            Assert.Equal("toml-syntax", query.Code);
            Assert.Equal(3, query.Source.Line);
        }
    }

    [Fact]
    public void The_good_study_gives_no_query()
    {
        Assert.Empty(StudyIntake.Read(GoodStudy.Bytes).Queries);
    }

    [Fact]
    public void Faults_in_every_file_are_found_in_one_pass()
    {
        var files = GoodStudy.Bytes;
        foreach (
            var (file, from, to) in new[]
            {
                ("protocol.toml", "percent = 7.5", "percent = nan"),
                ("study.toml", "invented = true", "invented = 1"),
                ("specimens.csv", "95.0", "95 %"),
                ("results.csv", "31.2", "x"),
            }
        )
        {
            files = files.With(file, GoodStudy.Edited(file, from, to).Files[file]);
        }

        Assert.Equal(
            ["protocol.toml", "study.toml", "specimens.csv", "results.csv"],
            StudyIntake.Read(files).Queries.Select(query => query.Source.File)
        );
    }

    [Fact]
    public void An_unreadable_protocol_still_lets_the_data_files_be_checked_for_their_form()
    {
        var files = GoodStudy
            .Edited("results.csv", "31.2", "3x")
            .With("protocol.toml", GoodStudy.Utf8("="));

        Assert.Equal(
            ["toml-syntax", "unknown-result"],
            StudyIntake.Read(files).Queries.Select(query => query.Code).Distinct()
        );
    }

    [Theory]
    [InlineData("protocol.toml", "Begin a new study with start")]
    [InlineData("study.toml", "Begin a new study with start")]
    [InlineData("specimens.csv", "[files]")]
    [InlineData("results.csv", "[files]")]
    public void A_missing_file_is_a_query_that_says_what_to_do(string name, string action)
    {
        var files = new StudyBytes(GoodStudy.Bytes.Files.Remove(name));

        var query = Assert.Single(
            StudyIntake.Read(files).Queries,
            query => query.Code == "missing-file"
        );

        Assert.Equal(name, query.Source.File);
        Assert.Contains(action, query.Action, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("protocol.toml")]
    [InlineData("study.toml")]
    [InlineData("specimens.csv")]
    [InlineData("results.csv")]
    public void Bytes_that_are_not_UTF8_are_a_query_with_their_line(string name)
    {
        byte[] bytes = [.. GoodStudy.Bytes.Files[name].Span];
        bytes[^1] = 0xFC;

        var query = Assert.Single(
            StudyIntake.Read(GoodStudy.Bytes.With(name, bytes)).Queries,
            query => query.Code == "not-utf8"
        );

        Assert.Equal(
            GoodStudy.Text(GoodStudy.Bytes, name).Count(c => c == '\n'),
            query.Source.Line
        );
    }

    [Fact]
    public void A_missing_controls_file_says_what_to_do()
    {
        var files = new StudyBytes(GoodStudy.Bytes.Files.Remove("controls.csv"));

        var query = Assert.Single(StudyIntake.Read(files).Queries);

        Assert.Equal(("controls-file-missing", "controls.csv"), (query.Code, query.Source.File));
        Assert.Contains("controls = \"kept elsewhere\"", query.Action, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "utf-16", "UTF-16")]
    [InlineData(false, "utf-16", "UTF-16")]
    public void UTF16_is_named(bool hasMark, string key, string says)
    {
        var encoding = new UnicodeEncoding(bigEndian: false, byteOrderMark: hasMark);
        byte[] bytes =
        [
            .. encoding.GetPreamble(),
            .. encoding.GetBytes(GoodStudy.Text(GoodStudy.Bytes, "results.csv")),
        ];

        var query = Assert.Single(
            StudyIntake.Read(GoodStudy.Bytes.With("results.csv", bytes)).Queries,
            query => query.Source.File == "results.csv"
        );

        Assert.Equal("not-utf8", query.Code);
        Assert.Contains(says, query.Message, StringComparison.Ordinal);
        Assert.Contains(
            $"encoding = \"{key}\" under [read.results]",
            query.Action,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Windows_1252_is_named()
    {
        var text = GoodStudy.Text(GoodStudy.Bytes, "results.csv");
        var bytes = Encoding.Latin1.GetBytes(
            text.Replace("above, the", "\u00fcber, the", StringComparison.Ordinal)
        );

        var query = StudyIntake
            .Read(GoodStudy.Bytes.With("results.csv", bytes))
            .Queries.Single(query => query.Code == "not-utf8");

        Assert.Equal(4, query.Source.Line);
        Assert.Contains("Windows-1252", query.Message, StringComparison.Ordinal);
        Assert.Contains("encoding = \"windows-1252\"", query.Action, StringComparison.Ordinal);
    }

    [Fact]
    public void An_identity_is_not_repeated_in_the_query()
    {
        var files = GoodStudy.Edited("specimens.csv", "S-001,A,X-01", "S-001,A,1961-04-23");

        var query = StudyIntake.Read(files).Queries[0];

        Assert.DoesNotContain("1961", query.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_code_is_raised_by_a_test_of_this_project()
    {
        string[] elsewhere =
        [
            "missing-file",
            "not-utf8",
            "file-too-large",
            "not-canonical",
            "controls-file-missing",
            "pairs-disagree",
            "unreadable-lock",
            "lock-chain-broken",
            "record-chain-broken",
            "lock-not-as-recorded",
            "lock-not-recorded",
            "signed-with-other-files",
            "revision-not-recorded",
            "value-stands-for-number",
            "own-column-left-aside",
            "decimal-point",
            "file-not-read",
            "locked-copy-missing",
            "mean-without-levels-stated",
            "spin-not-as-planned",
            "thaw-not-as-planned",
            "sent-times-differ",
            "ended-notice-missing",
            "ended-notice-not-right",
            "study-ended",
            "ended-notice-not-signed",
        ];

        Assert.Equal(
            QueryCatalog
                .All.Except(RaisedKinds.All)
                .Select(kind => kind.Code)
                .Order(StringComparer.Ordinal),
            BrokenTomlCases
                .All.Concat(LaxProtocolCases.All)
                .Concat(BrokenCsvCases.All)
                .Concat(HandlingCases.All)
                .Select(broken => broken.Code)
                .Concat(elsewhere)
                .Concat(OwnTables.MisreadingCases.All.Select(misreading => misreading.Code))
                .Concat(Messages.MessageCases.All.Select(misreading => misreading.Code))
                .Distinct()
                .Order(StringComparer.Ordinal)
        );
    }
}
