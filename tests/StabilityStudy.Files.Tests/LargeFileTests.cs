using System.Text;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>A large file is read in two halves side by side, unless it has a double quote; nobody may see which.</summary>
public sealed class LargeFileTests
{
    private const int Specimens = 33_000;
    private const string LastRemark = "the last";

    private static readonly string s_specimens = Lines(
        "specimen,tube,subject,group,storage,collected_at,spun_at",
        number =>
            $"S-{number:00000},A,X-{number:00000},none,wb-rt,2026-03-{number % 5 + 2:00}T07:00,2026-03-{number % 5 + 2:00}T07:10\nS-{number:00000},B,X-{number:00000},none,wb-rt,2026-03-{number % 5 + 2:00}T07:00,2026-03-{number % 5 + 2:00}T12:40"
    );

    private static readonly string s_results = Lines(
        "specimen,tube,analyte,time_point,replicate,tested_at,result,unit,run,instrument,lot,calibration,operator,flag,remark",
        number =>
            $"S-{number:00000},A,aPTT,baseline,1,2026-03-{number % 5 + 2:00}T07:50,{30 + number % 60 / 10m:0.0},s,R1,A1,L1,C1,P1,,\nS-{number:00000},B,aPTT,6 h,1,2026-03-{number % 5 + 2:00}T13:05,{31 + number % 70 / 10m:0.0},s,R2,A1,L1,C1,P1,,{(number == Specimens ? LastRemark : "")}"
    );

    [Fact]
    public void Both_ways_give_the_same_rows_with_their_lines()
    {
        var parted = Read(s_results);
        var whole = Read(Quoted(s_results));

        Assert.True(s_results.Length > 4_000_000);
        Assert.Equal(2 * Specimens, parted.Inputs.Results.Length);
        Assert.Equal(whole.Inputs.Results, parted.Inputs.Results);
        Assert.Equal(
            Enumerable.Range(2, 2 * Specimens),
            parted.Inputs.Results.Select(row => row.SourceRow)
        );
        Assert.Equal(
            whole.Canonical.Files.Select(file => file.Sha256),
            parted.Canonical.Files.Select(file => file.Sha256)
        );
    }

    [Theory]
    [InlineData("\r\n", "\r\n")]
    [InlineData("\r", "\n")]
    [InlineData("\n", "\n\n")]
    public void Lines_are_counted_alike_whatever_ends_them(string inFirst, string inSecond)
    {
        var middle = s_results.IndexOf("\nS-10000", StringComparison.Ordinal);
        var results =
            s_results[..middle].ReplaceLineEndings(inFirst)
            + s_results[middle..].Replace("\n", inSecond, StringComparison.Ordinal);

        Assert.Equal(Read(Quoted(results)).Inputs.Results, Read(results).Inputs.Results);
    }

    [Theory]
    [InlineData("S-00007,A,aPTT,baseline,1", "S-00007,A,aPTT,baseline,one")]
    [InlineData("S-29000,B,aPTT,6 h", "S-29000,B,aPTT,7 h")]
    [InlineData("S-29000,B,aPTT", "S-28000,B,aPTT")]
    [InlineData("S-29999,A,aPTT,baseline", "S-29999,A,baseline")]
    public void What_is_wrong_in_either_half_is_asked_alike(string old, string wrong)
    {
        var results = s_results.Replace(old, wrong, StringComparison.Ordinal);

        var queries = StudyIntake.Read(With(results)).Queries;

        Assert.Contains(queries, query => query.Severity == Severity.Stop);
        Assert.Equal(StudyIntake.Read(With(Quoted(results))).Queries, queries);
    }

    [Fact]
    public void A_mark_at_the_beginning_of_the_second_half_is_no_mark_of_the_file()
    {
        var middle = s_results.IndexOf('\n', s_results.Length / 2 + 2) + 1;
        var results = s_results.Insert(middle, "\uFEFF");

        var queries = StudyIntake.Read(With(results)).Queries;

        Assert.Contains(queries, query => query.Severity == Severity.Stop);
        Assert.Equal(StudyIntake.Read(With(Quoted(results))).Queries, queries);
    }

    private static string Lines(string header, Func<int, FormattableString> of) =>
        string.Concat(
            Enumerable
                .Range(1, Specimens)
                .Select(number => FormattableString.Invariant(of(number)) + "\n")
                .Prepend(header + "\n")
        );

    private static string Quoted(string results) =>
        results.Replace(LastRemark, $"\"{LastRemark}\"", StringComparison.Ordinal);

    private static StudyBytes With(string results) =>
        GoodStudy
            .Edited("study.toml", "\"S-002\"", "\"S-00002\"")
            .With("specimens.csv", Encoding.UTF8.GetBytes(s_specimens))
            .With("results.csv", Encoding.UTF8.GetBytes(results));

    private static StudyIntakeResult Read(string results)
    {
        Assert.True(StudyIntake.Read(With(results)).TryGet(out var study));
        return study;
    }
}
