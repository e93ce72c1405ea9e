using System.Diagnostics;
using StabilityStudy.Cli.Tests;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>Nothing of the machine gets into the report.</summary>
[Trait("lane", "slow")]
[Collection<ReportedExampleTests>]
public sealed class SameBytesTests(ReportedExample example)
{
    /// <summary>Names of the variations, with what each sets.</summary>
    private static readonly Dictionary<string, Action<ProcessStartInfo, string>> s_variations = new(
        StringComparer.Ordinal
    )
    {
        ["Turkish, another time zone and another working directory"] = (start, root) =>
        {
            start.Environment["TZ"] = "Asia/Tokyo";
            SetLanguage(start, "tr_TR.UTF-8");
            start.WorkingDirectory = root;
        },
        ["German, no culture data, no font of the machine and a plain processor"] = (start, root) =>
        {
            SetLanguage(start, "de_DE.UTF-8");
            start.Environment["DOTNET_SYSTEM_GLOBALIZATION_INVARIANT"] = "1";
            var file = Path.Combine(root, "fonts.conf");
            File.WriteAllText(
                file,
                "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig></fontconfig>"
            );
            start.Environment["FONTCONFIG_FILE"] = file;
            // Sums must not depend on how many numbers a processor adds at once.
            start.Environment["DOTNET_EnableHWIntrinsic"] = "0";
        },
    };

    public static TheoryData<string> Variations => [.. s_variations.Keys];

    [Theory]
    [MemberData(nameof(Variations))]
    public async Task The_report_has_the_same_bytes_with(string variation)
    {
        using var copy = StudyCopy.Create();

        var answer = await BuiltProgram.Run(
            start => s_variations[variation](start, copy.Root),
            "report",
            variation.Contains("working directory", StringComparison.Ordinal) ? "study" : copy.Study
        );

        Assert.True(answer.ExitCode == 0, answer.Error);
        Assert.Equal(example.Answer.Lines[..^1], answer.Lines[..^1]);
        RequireSame(example.A4, copy.At("study", "out", "report.pdf"));
        RequireSame(example.AnalysisJson, copy.At("study", "out", "analysis.json"));
    }

    private static void RequireSame(string expected, string actual) =>
        Assert.True(
            File.ReadAllBytes(expected).AsSpan().SequenceEqual(File.ReadAllBytes(actual)),
            actual + " has other bytes."
        );

    private static void SetLanguage(ProcessStartInfo start, string language)
    {
        start.Environment["LANG"] = language;
        start.Environment["LC_ALL"] = language;
    }
}
