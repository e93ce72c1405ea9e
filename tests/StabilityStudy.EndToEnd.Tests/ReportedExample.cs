using StabilityStudy.Cli;
using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>The example's report on both papers, made once on a copy of the study: the usual one by the built program.</summary>
public sealed class ReportedExample : IAsyncLifetime
{
    private readonly StudyCopy _copy = StudyCopy.Create();

    internal Answer Answer { get; private set; } = new(-1, "", "");

    internal string Root => _copy.Root;

    public string A4 => _copy.At("study", "out", "report.pdf");

    public string Letter => _copy.At("letter", "report.pdf");

    public string AnalysisJson => _copy.At("study", "out", "analysis.json");

    internal string On(string paper) => paper == "letter" ? Letter : A4;

    public async ValueTask InitializeAsync()
    {
        Answer = await BuiltProgram.Run("report", _copy.Study);
        var letter = await Run.Of("report", _copy.Study, "--paper", "letter", "-o", Letter);
        Assert.True(letter.Code == ExitCode.Done, letter.Error);
    }

    public ValueTask DisposeAsync()
    {
        _copy.Dispose();
        return ValueTask.CompletedTask;
    }
}

/// <summary>The tests that read that report; it is made only when one of them runs.</summary>
[CollectionDefinition]
public sealed class ReportedExampleTests : ICollectionFixture<ReportedExample>;
