using System.Text;
using System.Text.Json.Nodes;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Tests;

/// <summary>
/// What belongs to a specimen, a tube or a run stands once in analysis.json: nothing is lost by it, and nothing that is
/// forged in it, or in the form of earlier versions, goes unfound.
/// </summary>
[Trait("lane", "slow")]
public sealed class AnalysisFormTests
{
    private const int Earlier = AnalysisJson.EarlierFormat;

    private static readonly StudyAnalysis s_example = Analyze("aptt-room-temperature");

    private static readonly Dictionary<int, string> s_written = new()
    {
        [Earlier] = Written(s_example, Earlier),
        [AnalysisJson.Format] = Written(s_example, AnalysisJson.Format),
    };

    /// <summary>What somebody could forge: in which form, what stands there, and what would stand there.</summary>
    public static TheoryData<int, string, string> Forgeries() =>
        new()
        {
            // A figure of a pair, its result, its status, what it is.
            { 3, "\"changePercent\":3.4267912773", "\"changePercent\":3.4267922773" },
            { 3, ",\"changePercent\":3.4267912773", "" },
            {
                3,
                "\"delayed\":{\"tube\":\"N-001-B\",\"result\":\"33.2\"",
                "\"delayed\":{\"tube\":\"N-001-B\",\"result\":\"33.1\""
            },
            { 3, "\"result\":\"33.2\"", "\"result\":33.2" },
            {
                3,
                "\"result\":\"33.2\"",
                "\"result\":{\"kind\":\"measured\",\"value\":\"33.2\",\"text\":\"33.2\"}"
            },
            { 3, "\"delay\":\"PT6H5M\"", "\"delay\":\"PT6H4M\"" },
            { 3, "\"delay\":\"PT6H5M\",", "" },
            { 3, "\"status\":\"excluded\"", "\"status\":\"compared\"" },
            { 3, "\"status\":\"compared\",", "\"status\":\"compared\",\"isOutlier\":true," },
            { 3, ",\"countsForAgreement\":false", "" },
            { 3, "\"result\":{\"kind\":\"missing\"", "\"result\":{\"kind\":\"measured\"" },
            // The entry of a specimen, a tube, a run, a baseline.
            { 3, "\"subject\":\"S001\"", "\"subject\":\"S009\"" },
            {
                3,
                "\"collectedAt\":\"2026-03-02T07:05:00-05:00\"",
                "\"collectedAt\":\"2026-03-02T07:06:00-05:00\""
            },
            {
                3,
                "{\"tube\":\"N-001-B\",\"spunAt\":\"2026-03-02T12:38:00-05:00\"}",
                "{\"tube\":\"N-001-B\",\"spunAt\":\"2026-03-02T12:08:00-05:00\"}"
            },
            {
                3,
                "{\"tube\":\"N-001-B\",\"spunAt\":\"2026-03-02T12:38:00-05:00\"}",
                "{\"tube\":\"N-001-B\"}"
            },
            {
                3,
                "\"run\":\"2026-03-02-12H\",\"instrument\":\"AN1\"",
                "\"run\":\"2026-03-02-12H\",\"instrument\":\"AN2\""
            },
            { 3, "\"lot\":\"R-2601\",", "" },
            {
                3,
                "{\"specimen\":\"N-001\",\"tube\":\"N-001-A\",\"result\":\"32.1\"",
                "{\"specimen\":\"N-001\",\"tube\":\"N-001-A\",\"result\":\"33.1\""
            },
            // A reference to a specimen, tube or run that does not exist.
            { 3, "{\"specimen\":\"N-001\",\"status\"", "{\"specimen\":\"N-901\",\"status\"" },
            { 3, "{\"specimen\":\"N-001\",\"tube\"", "{\"specimen\":\"N-901\",\"tube\"" },
            { 3, "\"delayed\":{\"tube\":\"N-001-B\"", "\"delayed\":{\"tube\":\"N-001-Z\"" },
            {
                3,
                "\"run\":\"2026-03-02-6H\",\"sourceRow\"",
                "\"run\":\"2026-03-02-9H\",\"sourceRow\""
            },
            { 3, "{\"specimen\":\"N-001\",\"subject\"", "{\"specimen\":\"N-901\",\"subject\"" },
            // An entry that nobody names.
            {
                3,
                "\"specimens\": [",
                "\"specimens\": [{\"specimen\":\"N-901\",\"subject\":\"S901\",\"collectedAt\":\"2026-03-02T07:05:00-05:00\",\"tubes\":[]},"
            },
            { 3, "\"tubes\":[", "\"tubes\":[{\"tube\":\"Z\"}," },
            { 3, "\"runs\": [\n    {", "\"runs\": [{\"analyte\":\"aPTT\",\"run\":\"Z\"},{" },
            {
                3,
                "\"baselines\": [",
                "\"baselines\": [{\"specimen\":\"N-901\",\"tube\":\"A\",\"result\":\"1\"},"
            },
            {
                3,
                "\"pairs\": [",
                "\"pairs\": [{\"specimen\":\"N-901\",\"status\":\"not-assigned\"},"
            },
            // An entry or a list that is taken out.
            { 3, "{\"tube\":\"N-001-B\",\"spunAt\":\"2026-03-02T12:38:00-05:00\"},", "" },
            { 3, "\"specimens\": [", "\"others\": [" },
            { 3, "\"runs\": [\n    {", "\"others\": [\n    {" },
            { 3, "\"baselines\": [", "\"others\": [" },
            // The same in form 2, where each pair states all of it.
            { 2, "\"changePercent\": 3.4267912773", "\"changePercent\": 3.4267922773" },
            { 2, "\"value\": \"33.2\"", "\"value\": \"33.1\"" },
            { 2, "\"text\": \"33.2\"", "\"text\": \"33.1\"" },
            { 2, "\"delay\": \"PT6H5M\"", "\"delay\": \"PT6H4M\"" },
            { 2, "\"status\": \"excluded\"", "\"status\": \"compared\"" },
            { 2, "\"isOutlier\": false", "\"isOutlier\": true" },
            { 2, "\"countsForAgreement\": false", "\"countsForAgreement\": true" },
            { 2, "\"subject\": \"S001\"", "\"subject\": \"S009\"" },
            { 2, "\"collectionDay\": \"2026-03-02\"", "\"collectionDay\": \"2026-03-03\"" },
            { 2, "\"timeBeforeSpinning\": \"PT5H33M\"", "\"timeBeforeSpinning\": \"PT5H3M\"" },
            { 2, "\"instrument\": \"AN1\"", "\"instrument\": \"AN2\"" },
            { 2, "\"operator\": \"LS1\"", "\"operator\": \"LS2\"" },
            { 2, "\"sourceRow\": 3,", "\"sourceRow\": 4," },
            { 2, "\"tube\": \"N-001-B\"", "\"tube\": \"N-001-Z\"" },
            {
                2,
                "\"specimen\": \"N-001\",\n              \"subject\"",
                "\"specimen\": \"N-901\",\n              \"subject\""
            },
            {
                2,
                "\"pairs\": [",
                "\"pairs\": [{\"specimen\":\"N-901\",\"status\":\"not-assigned\"},"
            },
        };

    [Theory]
    [MemberData(nameof(Forgeries), DisableDiscoveryEnumeration = true)]
    public void What_is_forged_is_found_in_either_form_and_by_every_version(
        int format,
        string from,
        string to
    )
    {
        var forged = Replaced(s_written[format], from, to);

        Assert.NotEmpty(Compare(forged, format, ComparedVersion.Same).Faults);
        Assert.NotEmpty(Compare(forged, format, ComparedVersion.OtherWithSameRules).Faults);
        var underOtherRules = Compare(forged, format, ComparedVersion.OtherWithOtherRules);
        Assert.NotEmpty(underOtherRules.Faults.Concat(underOtherRules.UnderOtherRules));
    }

    [Theory]
    [InlineData(Earlier)]
    [InlineData(AnalysisJson.Format)]
    public void What_is_honest_differs_in_nothing(int format)
    {
        var found = Compare(s_written[format], format, ComparedVersion.Same);

        Assert.Empty(found.Faults);
        Assert.Empty(found.NotRecomputed);
        Assert.Empty(found.UnderOtherRules);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4)]
    public void A_form_that_never_was_is_refused(int format) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            AnalysisJson.WriteInForm(s_example, format)
        );

    /// <summary>The pairs of form 2 are put together again from what form 3 states, and everything else is the same.</summary>
    [Theory]
    [InlineData("aptt-room-temperature")]
    [InlineData("routine-room-temperature")]
    [InlineData("frozen-plasma")]
    [InlineData("small-paired-sheet")]
    public void All_that_form_2_stated_follows_from_form_3(string study)
    {
        var analysis = Analyze(study);
        var earlier = JsonNode.Parse(Written(analysis, Earlier))!.AsObject();
        var whole = WholePairs.Of(
            JsonNode.Parse(Written(analysis, AnalysisJson.Format))!.AsObject()
        );

        Assert.Equal(
            earlier["sequences"]!.AsArray().Sum(CountPairs),
            whole["sequences"]!.AsArray().Sum(CountPairs)
        );
        foreach (var (name, value) in earlier.Where(item => item.Key != "format"))
        {
            Assert.True(JsonNode.DeepEquals(value, whole[name]), name);
        }

        static int CountPairs(JsonNode? sequence) =>
            sequence!["cells"]!.AsArray().Sum(cell => cell!["pairs"]!.AsArray().Count);
    }

    [Fact]
    public void Each_entry_that_pairs_name_stands_on_one_line_once()
    {
        var lines = s_written[AnalysisJson.Format].Split('\n');

        Assert.Single(
            lines,
            line => line.Contains("\"subject\":\"S001\"", StringComparison.Ordinal)
        );
        Assert.Equal(
            3,
            lines.Count(line =>
                line.TrimStart()
                    .StartsWith("{\"specimen\":\"N-001\",\"status\"", StringComparison.Ordinal)
            )
        );
        Assert.All(
            lines.Where(line => line.Contains("\"status\":", StringComparison.Ordinal)),
            line => Assert.InRange(line.Length, 1, 400)
        );
    }

    private static AnalysisDifferences Compare(string stated, int format, ComparedVersion version)
    {
        Assert.True(
            StatedAnalysis.TryRead(Encoding.UTF8.GetBytes(stated), out var analysis, out var fault),
            fault
        );
        return AnalysisJson.Compare(
            analysis,
            AnalysisJson.WriteInForm(s_example, format),
            version,
            _ => true,
            _ => true,
            _ => true
        );
    }

    private static string Replaced(string text, string from, string to)
    {
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, from);
        return text[..at] + to + text[(at + from.Length)..];
    }

    private static string Written(StudyAnalysis analysis, int format) =>
        Encoding.UTF8.GetString(AnalysisJson.WriteInForm(analysis, format));

    private static StudyAnalysis Analyze(string example)
    {
        var study = CanonicalTests.Read(
            ExampleStudyTests.Read(Path.Combine(RepositoryFile.Root, "example-studies", example))
        );
        return StudyAnalyzer.Analyze(study.Inputs, study.Identity, study.LastingQueries, "0");
    }
}
