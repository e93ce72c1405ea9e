using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>A wrong clock is corrected by a statement: the recorded times stay, and the corrected ones are analyzed.</summary>
public sealed partial class ClockCorrectionTests
{
    private const string Run = "2026-03-13-6H";

    private const string Stated = $"""

        [[clock_correction]]
        runs = ["{Run}"]
        minutes = 60
        reason = "Clock of AN1 compared with that of the laboratory: one hour behind."
        by = "LS1"
        on = "2026-03-16"

        """;

    private static readonly StudyBytes s_right = ExampleStudyTests.Read(
        Path.Combine(RepositoryFile.Root, "example-studies", "aptt-room-temperature")
    );

    private static StudyBytes Wrong { get; } =
        Changed(Changed(s_right, "results.csv"), "controls.csv");

    [Fact]
    public void A_run_an_hour_off_is_told_with_the_statement_that_corrects_it()
    {
        var query = Assert.Single(
            StudyIntake.Read(Wrong).Queries,
            query => query.Code is "run-off-by-an-hour" or "run-an-hour-early"
        );

        Assert.Contains(
            $"[[clock_correction]] with runs = [\"{Run}\"], minutes = 60",
            query.Action,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData($"runs = [\"{Run}\"]")]
    [InlineData("days = [\"2026-03-13\"]\ninstrument = \"AN2\"")]
    public void Corrected_times_are_analyzed_and_recorded_ones_kept(string which)
    {
        // Only the run that was wrong is on the second instrument.
        var wrong =
            which[0] == 'r'
                ? Wrong
                : OnOther(
                    Wrong.With(
                        StudyBytes.FactsName,
                        GoodStudy.Utf8(
                            GoodStudy.Text(Wrong, StudyBytes.FactsName)
                                + "\n[[instrument]]\nid = \"AN2\"\nname = \"Invented second analyzer\"\n"
                        )
                    )
                );
        var study = CanonicalTests.Read(
            With(wrong, Stated.Replace($"runs = [\"{Run}\"]", which, StringComparison.Ordinal))
        );
        var right = CanonicalTests.Read(s_right).Inputs;

        Assert.Equal(
            right.Results.Select(row => (row.Specimen, row.Tube, row.TestedAt)),
            study.Inputs.Results.Select(row => (row.Specimen, row.Tube, row.TestedAt))
        );
        Assert.Equal(
            right.Controls.Select(row => (row.Control, row.Run, row.TestedAt)),
            study.Inputs.Controls.Select(row => (row.Control, row.Run, row.TestedAt))
        );
        var kept = CanonicalTests
            .Read(s_right)
            .Canonical.Data.Aggregate(
                new StudyBytes(s_right.Files.Clear()),
                (all, file) => all.With(file.Name, file.Bytes)
            );
        kept = Changed(Changed(kept, "results.csv"), "controls.csv");
        kept = which[0] == 'r' ? kept : OnOther(kept);
        Assert.All(
            study.Canonical.Data,
            file =>
                Assert.Equal(
                    GoodStudy.Text(kept, file.Name),
                    Encoding.UTF8.GetString(file.Bytes.Span)
                )
        );
        Assert.DoesNotContain(
            study.LastingQueries,
            query => query.Code.Contains("an-hour", StringComparison.Ordinal)
        );

        // What was looked at with another correction was another study.
        var other = Stated.Replace("minutes = 60", "minutes = 61", StringComparison.Ordinal);
        Assert.NotEqual(
            CanonicalTests.Read(With(Wrong, Stated)).Identity.DataSha256,
            CanonicalTests.Read(With(Wrong, other)).Identity.DataSha256
        );
    }

    [Fact]
    public void The_canonical_files_are_corrected_once_and_not_again()
    {
        var files = With(Wrong, Stated);
        var study = CanonicalTests.Read(files);
        var attached = study.Canonical.Files.Aggregate(
            files,
            (all, file) => all.With(file.Name, file.Bytes)
        );

        Assert.True(
            StudyIntake.ReadCanonical(attached, isOfOtherVersion: false).TryGet(out var again)
        );
        Assert.Equal(
            study.Inputs.Results.Select(row => row.TestedAt),
            again.Inputs.Results.Select(row => row.TestedAt)
        );
        Assert.Equal(study.Identity.DataSha256, again.Identity.DataSha256);
    }

    [Theory]
    [InlineData(
        $"runs = [\"{Run}\"]",
        "runs = [\"2026-03-13-6h\"]",
        "unknown-reference",
        "Did you mean"
    )]
    [InlineData(
        $"runs = [\"{Run}\"]",
        "days = [\"2026-05-01\"]",
        "unknown-reference",
        "nothing is corrected"
    )]
    [InlineData($"runs = [\"{Run}\"]", "", "missing-key", "either the runs or the days")]
    [InlineData("minutes", "days = [\"2026-03-13\"]\nminutes", "missing-key", "not both")]
    [InlineData("minutes", "instrument = \"AN7\"\nminutes", "unknown-reference", "AN7")]
    [InlineData("minutes = 60", "minutes = 0", "out-of-range", "corrects nothing")]
    [InlineData("minutes = 60", "minutes = 100000", "out-of-range", "1440")]
    [InlineData("\"LS1\"", "\"LS9\"", "unknown-reference", "LS9")]
    [InlineData("reason = ", "reasons = ", "unknown-key", "reason")]
    public void A_correction_that_is_not_clear_is_a_query(
        string from,
        string to,
        string code,
        string says
    )
    {
        Assert.Contains(from, Stated, StringComparison.Ordinal);
        var queries = StudyIntake
            .Read(With(Wrong, Stated.Replace(from, to, StringComparison.Ordinal)))
            .Queries;

        var query = queries.First(query => query.Code == code);
        Assert.Equal(Severity.Stop, query.Severity);
        Assert.Contains(says, query.Message + query.Action, StringComparison.Ordinal);
    }

    [Fact]
    public void A_result_is_corrected_once_only() =>
        Assert.Contains(
            StudyIntake.Read(With(Wrong, Stated + Stated)).Queries,
            query =>
                query.Code == "duplicate-id"
                && query.Message.Contains("already corrected", StringComparison.Ordinal)
        );

    private static StudyBytes With(StudyBytes files, string more) =>
        files.With(
            StudyBytes.FactsName,
            GoodStudy.Utf8(GoodStudy.Text(files, StudyBytes.FactsName) + more)
        );

    /// <summary>The times of the run an hour early.</summary>
    private static StudyBytes Changed(StudyBytes files, string name) =>
        files.With(
            name,
            GoodStudy.Utf8(
                string.Join(
                    '\n',
                    GoodStudy
                        .Text(files, name)
                        .Split('\n')
                        .Select(line =>
                            line.Contains(Run, StringComparison.Ordinal)
                                ? Hour()
                                    .Replace(
                                        line,
                                        match =>
                                            $"T{int.Parse(match.Groups["hour"].ValueSpan, CultureInfo.InvariantCulture) - 1:00}:"
                                    )
                                : line
                        )
                )
            )
        );

    private static StudyBytes OnOther(StudyBytes files) =>
        files.With(
            "results.csv",
            GoodStudy.Utf8(
                GoodStudy
                    .Text(files, "results.csv")
                    .Replace($"{Run},AN1", $"{Run},AN2", StringComparison.Ordinal)
            )
        );

    [GeneratedRegex("T(?<hour>[0-9]{2}):", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Hour();
}
