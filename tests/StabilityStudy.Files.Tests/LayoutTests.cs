using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

public sealed class LayoutTests
{
    private const string Layout = """"

        [read.results]
        delimiter = ";"
        decimal = ","
        encoding = "latin-1"
        date_format = "dd.MM.yyyy HH:mm"
        columns = { specimen = "Probe", tube = "Röhrchen", time_point = "Zeit", tested_at = "Gemessen", result = "Ergebnis" }
        values = { time_point = { "T0" = "baseline", "T6" = "6 h" } }
        constants = { analyte = "aPTT", unit = "s" }

        """";

    private const string Results = """"
        Probe;Röhrchen;Name;Zeit;Gemessen;Ergebnis
        S-001;A;nobody;T0;02.03.2026 07:50;31,2
        S-001;B;nobody;T6;02.03.2026 13:05;>180
        S-002;A;nobody;T0;03.03.2026 07:55;29,8
        S-002;B;nobody;8 h;;QNS

        """";

    [Fact]
    public void A_facility_export_is_read_as_study_toml_describes_it()
    {
        var study = CanonicalTests.Read(With(Layout, Results));

        var canonical = Encoding.UTF8.GetString(study.Canonical.Files[1].Bytes.Span);
        Assert.Equal(
            """"
            specimen,tube,analyte,time_point,replicate,tested_at,result,unit,run,instrument,lot,calibration,operator,flag,remark,source_row
            S-001,A,aPTT,baseline,1,2026-03-02T07:50:00+01:00,31.2,s,,,,,,,,2
            S-001,B,aPTT,6 h,1,2026-03-02T13:05:00+01:00,>180,s,,,,,,,,3
            S-002,A,aPTT,baseline,1,2026-03-03T07:55:00+01:00,29.8,s,,,,,,,,4
            S-002,B,aPTT,8 h,1,,QNS,s,,,,,,,,5

            """",
            canonical
        );
    }

    [Fact]
    public void Times_may_have_AM_and_PM()
    {
        var files = With(
            Layout.Replace("dd.MM.yyyy HH:mm", "M/d/yyyy h:mm tt", StringComparison.Ordinal),
            Results
                .Replace("02.03.2026 07:50", "3/2/2026 7:50 AM", StringComparison.Ordinal)
                .Replace("02.03.2026 13:05", "3/2/2026 1:05 pm", StringComparison.Ordinal)
                .Replace("03.03.2026 07:55", "3/3/2026 7:55 AM", StringComparison.Ordinal)
        );

        Assert.Equal(
            CanonicalTests.Read(With(Layout, Results)).Canonical.Files[1].Sha256,
            CanonicalTests.Read(files).Canonical.Files[1].Sha256
        );
    }

    [Fact]
    public void A_time_that_does_not_fit_is_told_with_the_form_that_was_asked_for()
    {
        var query = StudyIntake
            .Read(
                With(
                    Layout,
                    Results.Replace("02.03.2026 07:50", "3/2/26", StringComparison.Ordinal)
                )
            )
            .Queries.First(item => item.Code == "not-a-time");

        Assert.Contains("\"dd.MM.yyyy HH:mm\"", query.Action, StringComparison.Ordinal);
    }

    [Fact]
    public void Canonical_files_are_not_translated_again()
    {
        var files = With(Layout, Results);
        var first = CanonicalTests.Read(files);
        var attached = first.Canonical.Files.Aggregate(
            files,
            (all, file) => all.With(file.Name, file.Bytes)
        );

        Assert.Equal(
            first.Identity.InputDigest,
            CanonicalTests.Read(attached).Identity.InputDigest
        );
    }

    [Fact]
    public void UTF16_with_tabs_is_read_when_study_toml_says_so()
    {
        var text = GoodStudy.Results.Replace("above, the", "above the", StringComparison.Ordinal);
        var layout = "\n[read.results]\nencoding = \"utf-16\"\ndelimiter = \"tab\"\n";
        byte[] bytes =
        [
            .. Encoding.Unicode.GetPreamble(),
            .. Encoding.Unicode.GetBytes(text.Replace(',', '\t')),
        ];
        var files = GoodStudy
            .Bytes.With("study.toml", GoodStudy.Utf8(GoodStudy.Facts + layout))
            .With("results.csv", bytes);
        var plain = GoodStudy.Bytes.With("results.csv", GoodStudy.Utf8(text));

        Assert.Equal(
            CanonicalTests.Read(plain).Canonical.Files[1].Sha256,
            CanonicalTests.Read(files).Canonical.Files[1].Sha256
        );
    }

    [Theory]
    [InlineData("\";\"", "\"#\"", "unknown-word", "read.results.delimiter")]
    [InlineData("\",\"", "\"'\"", "unknown-word", "read.results.decimal")]
    [InlineData("latin-1", "latin-9", "unknown-word", "read.results.encoding")]
    [InlineData("dd.MM.yyyy", "dd.MM.yy", "missing-key", "read.results.century")]
    [InlineData("dd.MM", "dd.MMT", "unknown-word", "read.results.date_format")]
    [InlineData("HH:mm", "hh:mm", "unknown-word", "read.results.date_format")]
    [InlineData("HH:mm", "HH:mm tt", "unknown-word", "read.results.date_format")]
    [InlineData("decimal", "decimals", "unknown-key", "read.results.decimals")]
    [InlineData("tested_at =", "tested =", "unknown-key", "read.results.columns.tested")]
    [InlineData("unit = \"s\"", "units = \"s\"", "unknown-key", "read.results.constants.units")]
    [InlineData("[read.results]", "[read.result]", "unknown-key", "read.result")]
    [InlineData("\"baseline\"", "0", "wrong-type", "read.results.values.time_point.T0")]
    [InlineData("= \"Ergebnis\"", "= \"Resultat\"", "missing-column", "result")]
    [InlineData("analyte = \"aPTT\", ", "", "missing-column", "analyte")]
    [InlineData("unit = \"s\"", "unit = \"s\", result = \"1\"", "duplicate-column", "result")]
    [InlineData("\"T6\"", "\"T7\"", "unknown-time-point", "time_point")]
    public void A_broken_description_is_a_query(string from, string to, string code, string column)
    {
        Assert.Contains(from, Layout, StringComparison.Ordinal);
        var at = Layout.IndexOf(from, StringComparison.Ordinal);
        var outcome = StudyIntake.Read(
            With(Layout[..at] + to + Layout[(at + from.Length)..], Results)
        );

        Assert.Contains(
            outcome.Queries,
            query =>
                query.Severity == Severity.Stop
                && query.Code == code
                && query.Source.Column == column
        );
    }

    [Theory]
    [InlineData("31,2", "1.031,2", "unknown-result", "result")]
    [InlineData("02.03.2026 07:50", "02.03.26 07:50", "not-a-time", "tested_at")]
    [InlineData("02.03.2026 07:50", "32.03.2026 07:50", "not-a-time", "tested_at")]
    public void A_value_that_does_not_fit_the_description_is_a_query(
        string from,
        string to,
        string code,
        string column
    )
    {
        var outcome = StudyIntake.Read(
            With(Layout, Results.Replace(from, to, StringComparison.Ordinal))
        );

        var query = outcome.Queries.First(query => query.Code == code);
        Assert.Equal((2, column, to), (query.Source.Line, query.Source.Column, query.Observed));
    }

    [Theory]
    [InlineData("result = { \"44,7\" = \"30,7\" }")]
    [InlineData("result = { \"high\" = \"30,7\" }")]
    [InlineData("tested_at = { \"noon\" = \"2026-03-02T12:00\" }")]
    public void No_setting_reads_a_number_or_time_as_another(string values)
    {
        var layout = Layout.Replace(
            "values = { ",
            "values = { " + values + ", ",
            StringComparison.Ordinal
        );

        var queries = StudyIntake.Read(With(layout, Results)).Queries;

        Assert.Contains(
            queries,
            query => (query.Code, query.Severity) == ("value-stands-for-number", Severity.Stop)
        );
    }

    [Fact]
    public void A_point_among_decimal_commas_may_be_thousands_and_stops()
    {
        var queries = StudyIntake
            .Read(With(Layout, Results.Replace("31,2", "31.2", StringComparison.Ordinal)))
            .Queries;

        var query = Assert.Single(queries, query => query.Code == "decimal-point");
        Assert.Equal((2, "31.2"), (query.Source.Line, query.Observed));
    }

    [Fact]
    public void A_column_of_the_usual_name_that_is_not_read_is_told()
    {
        var queries = StudyIntake
            .Read(With(Layout, Results.Replace("Name", "result", StringComparison.Ordinal)))
            .Queries;

        var query = Assert.Single(queries, query => query.Code == "own-column-left-aside");
        Assert.Contains("\"Ergebnis\"", query.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_that_is_not_read_is_told()
    {
        var queries = StudyIntake
            .Read(GoodStudy.Bytes.With("results-final.csv", GoodStudy.Bytes.Files["results.csv"]))
            .Queries;

        Assert.Equal("results-final.csv", Assert.Single(queries).Source.File);
    }

    [Fact]
    public void Windows_1252_has_signs_that_Latin_1_has_not()
    {
        var layout = Layout
            .Replace("latin-1", "windows-1252", StringComparison.Ordinal)
            .Replace("\"Zeit\"", "\"Zeit \u20ac\"", StringComparison.Ordinal);
        var at = Results.IndexOf(";Zeit;", StringComparison.Ordinal) + ";Zeit".Length;
        var bytes = Encoding.Latin1.GetBytes(Results);
        byte[] withEuro = [.. bytes[..at], (byte)' ', 0x80, .. bytes[at..]];

        CanonicalTests.Read(
            GoodStudy
                .Bytes.With("study.toml", GoodStudy.Utf8(GoodStudy.Facts + layout))
                .With("results.csv", withEuro)
        );
    }

    private static StudyBytes With(string layout, string results) =>
        GoodStudy
            .Bytes.With("study.toml", GoodStudy.Utf8(GoodStudy.Facts + layout))
            .With("results.csv", Encoding.Latin1.GetBytes(results));
}
