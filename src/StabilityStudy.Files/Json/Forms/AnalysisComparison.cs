using System.Text.Json;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What a difference means. The zero member is that of a figure.</summary>
internal enum ComparisonWeight
{
    /// <summary>A figure or word that follows from the inputs by the rules.</summary>
    Figure,

    /// <summary>It follows from the inputs alone, whatever the rules.</summary>
    Inputs,

    /// <summary>A conclusion, or what one hangs on: it may not be left out.</summary>
    Decisive,
}

/// <summary>How the version that made a report stands to this one.</summary>
public enum ComparedVersion
{
    /// <summary>This very version: nothing may differ.</summary>
    Same,

    /// <summary>Another version with the same rules: what both have must be the same.</summary>
    OtherWithSameRules,

    /// <summary>A version with other rules: what follows from the inputs alone must be the same.</summary>
    OtherWithOtherRules,
}

/// <summary>Takes the differences between what a report states and what was computed again.</summary>
internal sealed class AnalysisComparison
{
    private readonly ComparedVersion _version;
    private readonly ComparisonWeight _weight;
    private readonly Func<string, bool> _knewThen;
    private readonly Func<string, bool> _knownNow;
    private readonly Func<string, bool> _hadThen;
    private readonly Found _found;

    /// <summary>Begins a comparison.</summary>
    /// <param name="version">How the version that made the report stands to this one.</param>
    /// <param name="knewThen">Whether that version could raise a data query of a code.</param>
    /// <param name="knownNow">Whether this version can.</param>
    /// <param name="hadThen">Whether the version that made the report states a property.</param>
    public AnalysisComparison(
        ComparedVersion version,
        Func<string, bool> knewThen,
        Func<string, bool> knownNow,
        Func<string, bool> hadThen
    )
        : this(version, ComparisonWeight.Figure, knewThen, knownNow, hadThen, new Found([], [], []))
    { }

    private AnalysisComparison(
        ComparedVersion version,
        ComparisonWeight weight,
        Func<string, bool> knewThen,
        Func<string, bool> knownNow,
        Func<string, bool> hadThen,
        Found found
    )
    {
        _version = version;
        _weight = weight;
        _knewThen = knewThen;
        _knownNow = knownNow;
        _hadThen = hadThen;
        _found = found;
    }

    /// <summary>What was found.</summary>
    public AnalysisDifferences Differences =>
        new([.. _found.Faults], [.. _found.NotRecomputed], [.. _found.UnderOtherRules]);

    /// <summary>The same comparison for a part whose differences weigh more.</summary>
    public AnalysisComparison Weighing(ComparisonWeight weight) =>
        new(_version, weight, _knewThen, _knownNow, _hadThen, _found);

    /// <summary>Both have it, and it is not the same.</summary>
    public void Differs(string path, JsonElement stated, JsonElement computed) =>
        Differs(
            $"{path} is {Short(stated)} in the report and {Short(computed)} when computed again."
        );

    /// <summary>Both have it, and it is not the same, in words.</summary>
    public void Differs(string what) =>
        (
            _version == ComparedVersion.OtherWithOtherRules && _weight != ComparisonWeight.Inputs
                ? _found.UnderOtherRules
                : _found.Faults
        ).Add(what);

    /// <summary>The report lacks what this version computes.</summary>
    public void MissingInReport(string path, bool isDecisive) =>
        OneSide($"{path} is missing in the report.", path, isDecisive);

    /// <summary>The report lacks a property that this version states.</summary>
    /// <param name="path">Its place.</param>
    /// <param name="name">Its name as in <see cref="AnalysisJson.Properties"/>.</param>
    /// <param name="isDecisive">Whether it may never be left out.</param>
    public void MissingInReport(string path, string name, bool isDecisive)
    {
        if (!isDecisive && _hadThen(name))
        {
            Differs($"{path} is missing in the report.");
        }
        else
        {
            MissingInReport(path, isDecisive);
        }
    }

    /// <summary>The report has what this version does not know.</summary>
    public void InReportOnly(string path) => OneSide($"{path} is in the report only.", path, false);

    /// <summary>This version raises a data query that the report does not state.</summary>
    public void MissingQuery(string code, string place)
    {
        if (_knewThen(code))
        {
            Differs($"The data query \"{code}\" is missing in the report: {place}.");
        }
        else
        {
            OneSide("", $"the data query \"{code}\", which is new in this version: {place}", false);
        }
    }

    /// <summary>The report states a data query that this version does not raise.</summary>
    public void QueryInReportOnly(string code, string place)
    {
        if (_knownNow(code))
        {
            Differs($"The data query \"{code}\" is in the report only: {place}.");
        }
        else
        {
            OneSide(
                $"The data query \"{code}\" of the report is unknown: {place}.",
                $"the data query \"{code}\" of the report, which this version does not know: {place}",
                false
            );
        }
    }

    private void OneSide(string fault, string path, bool isDecisive)
    {
        if (_version == ComparedVersion.Same || isDecisive)
        {
            _found.Faults.Add(fault);
        }
        else
        {
            _found.NotRecomputed.Add(path);
        }
    }

    private static string Short(JsonElement value)
    {
        const int most = 60;
        var text = value.GetRawText();
        return text.Length <= most ? text : text[..most] + "…";
    }

    private sealed record Found(
        List<string> Faults,
        List<string> NotRecomputed,
        List<string> UnderOtherRules
    );
}

/// <summary>The differences between what a report states and what was computed again.</summary>
/// <param name="Faults">What may not differ, in words.</param>
/// <param name="NotRecomputed">What only one of two versions has.</param>
/// <param name="UnderOtherRules">What differs and may, because the rules are others, in words.</param>
public sealed record AnalysisDifferences(
    ImmutableArray<string> Faults,
    ImmutableArray<string> NotRecomputed,
    ImmutableArray<string> UnderOtherRules
);
