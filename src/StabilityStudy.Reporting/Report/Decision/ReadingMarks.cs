using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Criteria;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>Marks beside figures of page 1 that are not those measured, and their key.</summary>
internal static class ReadingMarks
{
    /// <summary>A letter with a space before it; empty for a change as measured.</summary>
    public static string Of(ChangeReading reading) =>
        reading switch
        {
            ChangeReading.AsMeasured => "",
            ChangeReading.SinceCollection => " s",
            ChangeReading.RunsBridged => " c",
            ChangeReading.RunsBridgedSinceCollection => " c, s",
        };

    /// <summary>The reading that decided a criterion; as measured where it has none of its own.</summary>
    public static ChangeReading ReadingOf(CriterionResult result) =>
        result switch
        {
            BiasResult bias => bias.Reading,
            IndividualResult individual => individual.Reading,
            _ => ChangeReading.AsMeasured,
        };

    /// <summary>What the letters mean that page 1 has; null without any.</summary>
    public static string? Key(StudyAnalysis analysis)
    {
        var read = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Criteria)
            .Select(ReadingOf)
            .ToHashSet();
        string[] words =
        [
            .. read.Overlaps([ChangeReading.RunsBridged, ChangeReading.RunsBridgedSinceCollection])
                ? ["c: " + ReadingWords.Of(ChangeReading.RunsBridged)]
                : Array.Empty<string>(),
            .. read.Overlaps([
                ChangeReading.SinceCollection,
                ChangeReading.RunsBridgedSinceCollection,
            ])
                ? ["s: changes " + ReadingWords.Of(ChangeReading.SinceCollection)]
                : Array.Empty<string>(),
        ];
        return words.Length == 0 ? null : string.Join("; ", words) + ".";
    }
}
