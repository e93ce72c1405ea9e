using System.Collections.Concurrent;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Intake;
using StabilityStudy.Pipeline.Tests.Studies;

namespace StabilityStudy.Pipeline.Tests;

[Trait("lane", "slow")]
public sealed class BrokenStudyTests
{
    private static readonly ConcurrentDictionary<
        BrokenStudy,
        Lazy<Outcome<AnalyzedStudy>>
    > s_analyzed = new();

    /// <summary>Every column that is read is described there.</summary>
    private static readonly Lazy<string> s_formats = new(() =>
        File.ReadAllText(Path.Combine(RepositoryFile.Root, "src/StabilityStudy.Files/FORMATS.md"))
    );

    public static TheoryData<BrokenStudy> Cases => [.. BrokenStudyCases.All];

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void A_fault_gives_its_query_with_file_and_line(BrokenStudy broken)
    {
        var outcome = Analyzed(broken);

        var found = outcome.Queries.FirstOrDefault(query =>
            query.Code == broken.Code
            && query.Source.File == (broken.QueryFile ?? broken.File)
            && query.Source.Line == LineOf(broken)
        );
        Assert.True(
            found is not null,
            $"{broken}: expected line {LineOf(broken)}, found {string.Join(" | ", outcome.Queries.Select(query => $"{query.Code} {query.Source}"))}"
        );
        Assert.Equal(broken.GoesOn, outcome.TryGet(out _));
        Assert.Equal(!broken.GoesOn, found.Severity == Severity.Stop);
        Assert.NotEqual("", found.Message);
        Assert.NotEqual("", found.Action);
        Assert.All(
            outcome
                .Queries.Where(query =>
                    query.Source.File.EndsWith(".csv", StringComparison.Ordinal)
                    && query.Observed != query.Source.Column
                )
                .Select(query => query.Source.Column)
                .OfType<string>()
                .Distinct(),
            name => Assert.Contains($"`{name}`", s_formats.Value, StringComparison.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void Check_finds_every_fault_that_stops_the_analysis(BrokenStudy broken)
    {
        var files = ExampleStudy.Edited(broken.File, broken.From, broken.To);

        Assert.Equal(Analyzed(broken).TryGet(out _), StudyPipeline.Check(files).TryGet(out _));
    }

    [Theory]
    [InlineData(ExampleStudy.Protocol)]
    [InlineData(ExampleStudy.Facts)]
    [InlineData(ExampleStudy.Specimens)]
    [InlineData(ExampleStudy.Results)]
    public void A_missing_or_an_empty_file_stops_with_its_name(string name)
    {
        var missing = StudyPipeline.Analyze(new StudyBytes(ExampleStudy.Bytes.Files.Remove(name)));
        var empty = StudyPipeline.Analyze(ExampleStudy.With(name, ""));

        Assert.False(missing.TryGet(out _));
        Assert.Contains(
            missing.Queries,
            query => query.Code == "missing-file" && query.Source.File == name
        );
        Assert.False(empty.TryGet(out _));
        Assert.Contains(
            empty.Queries,
            query => query.Severity == Severity.Stop && query.Source.File == name
        );
    }

    private static Outcome<AnalyzedStudy> Analyzed(BrokenStudy broken) =>
        s_analyzed
            .GetOrAdd(
                broken,
                key => new Lazy<Outcome<AnalyzedStudy>>(() =>
                    StudyPipeline.Analyze(ExampleStudy.Edited(key.File, key.From, key.To))
                )
            )
            .Value;

    private static int? LineOf(BrokenStudy broken)
    {
        if (broken.WholeFile || broken.QueryFile is not null)
        {
            return broken.QueryLine;
        }

        var text = ExampleStudy.Text(broken.File);
        var at = text.IndexOf(broken.Place ?? broken.From, StringComparison.Ordinal);
        // An edit that begins with the end of a line is about the line after it.
        at += broken.From.StartsWith('\n') ? 1 : 0;
        return text[..at].Count(letter => letter == '\n') + 1 + broken.LinesBelow;
    }
}
