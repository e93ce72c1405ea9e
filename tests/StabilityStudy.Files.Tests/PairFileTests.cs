using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

public sealed class PairFileTests
{
    private const string Pairs = """"
        specimen,collected_at,baseline_tested_at,baseline_result,time_point,delayed_tested_at,delayed_result,baseline_run,delayed_run,clot
        S-001,2026-03-02T07:00,2026-03-02T07:50,31.2,6 h,2026-03-02T13:05,32.5,R1,R2,no
        S-001,2026-03-02T07:00,2026-03-02T07:50,31.2,8 h,2026-03-02T15:05,33.0,R1,R3,no
        S-002,2026-03-03T07:00,2026-03-03T07:55,>180,8 h,,QNS,R3,,yes

        """";

    [Fact]
    public void A_row_a_pair_becomes_tubes_and_results()
    {
        var files = CanonicalTests.Read(With(Pairs)).Canonical.Files;

        Assert.Equal(
            """"
            S-001,6 h,S-001,none,wb-rt,,2026-03-02T07:00:00+01:00,,,,,,,,,,no,,,2
            S-001,8 h,S-001,none,wb-rt,,2026-03-02T07:00:00+01:00,,,,,,,,,,no,,,3
            S-001,B,S-001,none,wb-rt,,2026-03-02T07:00:00+01:00,,,,,,,,,,,,,2
            S-002,8 h,S-002,none,wb-rt,,2026-03-03T07:00:00+01:00,,,,,,,,,,yes,,,4
            S-002,B,S-002,none,wb-rt,,2026-03-03T07:00:00+01:00,,,,,,,,,,,,,4

            """",
            Rows(files[0].Bytes)
        );
        Assert.Equal(
            """"
            S-001,6 h,aPTT,6 h,1,2026-03-02T13:05:00+01:00,32.5,s,R2,,,,,,,2
            S-001,8 h,aPTT,8 h,1,2026-03-02T15:05:00+01:00,33.0,s,R3,,,,,,,3
            S-001,B,aPTT,baseline,1,2026-03-02T07:50:00+01:00,31.2,s,R1,,,,,,,2
            S-002,8 h,aPTT,8 h,1,,QNS,s,,,,,,,,4
            S-002,B,aPTT,baseline,1,2026-03-03T07:55:00+01:00,>180,s,R3,,,,,,,4

            """",
            Rows(files[1].Bytes)
        );
    }

    [Fact]
    public void The_attachments_stand_in_for_the_file_of_pairs()
    {
        var files = With(Pairs);
        var first = CanonicalTests.Read(files);
        var attached = first.Canonical.Files.Aggregate(
            new StudyBytes(files.Files.Remove("pairs.csv")),
            (all, file) => all.With(file.Name, file.Bytes)
        );

        Assert.Equal(["pairs.csv", "controls.csv"], first.Identity.RawFiles.Select(f => f.Name));
        Assert.Equal(
            first.Identity.InputDigest,
            CanonicalTests.Read(attached).Identity.InputDigest
        );
    }

    [Theory]
    [InlineData("31.2,8 h", "31.3,8 h", "pairs-disagree", "baseline_result", 3)]
    [InlineData("T07:50,31.2,8 h", "T07:51,31.2,8 h", "pairs-disagree", "baseline_tested_at", 3)]
    [InlineData("33.0,R1", "33.0,R9", "pairs-disagree", "baseline_run", 3)]
    [InlineData("31.2,8 h", "31.2,", "missing-value", "time_point", 3)]
    [InlineData("31.2,8 h", "31.2,baseline", "unknown-time-point", "time_point", 3)]
    [InlineData("31.2,8 h", "31,2,8 h", "decimal-comma", "baseline_result", 3)]
    [InlineData("33.0", "x", "unknown-result", "delayed_result", 3)]
    [InlineData("31.2,8 h", "31.2,6 h", "conflicting-rows", null, 3)]
    [InlineData(",collected_at", ",collected", "missing-column", "collected_at", 1)]
    public void A_broken_pair_is_a_query(
        string from,
        string to,
        string code,
        string? column,
        int line
    )
    {
        var queries = StudyIntake
            .Read(With(Pairs.Replace(from, to, StringComparison.Ordinal)))
            .Queries;

        Assert.Contains(
            queries,
            query =>
                query.Severity == Severity.Stop
                && query.Code == code
                && query.Source == new QuerySource("pairs.csv", line, column)
        );
    }

    [Fact]
    public void A_missing_file_of_pairs_is_named()
    {
        var files = new StudyBytes(With(Pairs).Files.Remove("pairs.csv"));

        Assert.Contains(
            StudyIntake.Read(files).Queries,
            query => query.Code == "missing-file" && query.Source.File == "pairs.csv"
        );
    }

    private static string Rows(ReadOnlyMemory<byte> csv)
    {
        var text = Encoding.UTF8.GetString(csv.Span);
        return text[(text.IndexOf('\n', StringComparison.Ordinal) + 1)..];
    }

    private static StudyBytes With(string pairs)
    {
        var facts = GoodStudy.Facts + "\n[read.pairs]\nfile = \"pairs.csv\"\n";
        return new StudyBytes(GoodStudy.Bytes.Files.Remove("specimens.csv").Remove("results.csv"))
            .With("study.toml", GoodStudy.Utf8(facts))
            .With("pairs.csv", GoodStudy.Utf8(pairs));
    }
}
