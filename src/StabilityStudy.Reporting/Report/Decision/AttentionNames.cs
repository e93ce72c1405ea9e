using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>Names in remarks: of the specimens, after the first ones the number of the others; of the time points in place of their keys.</summary>
internal static class AttentionNames
{
    private const int MostNames = 6;

    /// <summary>"N-034 at 6 h, N-027 at 12 h and 3 more (5 in all)".</summary>
    public static string Of(StudyAnalysis analysis, Func<PairRecord, bool> holds)
    {
        ImmutableArray<string> names =
        [
            .. analysis
                .Sequences.SelectMany(sequence => sequence.Cells)
                .SelectMany(cell =>
                    cell.Pairs.Where(holds).Select(pair => Name(analysis, cell, pair))
                ),
        ];
        return names.Length <= MostNames
            ? string.Join(", ", names)
            : $"{string.Join(", ", names.Take(MostNames))} and {NumberText.Count(names.Length - MostNames)} more ({NumberText.Count(names.Length)} in all)";
    }

    /// <summary>A message with the names that page 1 uses: "No anticoagulant at 8 h" for "aPTT · none · wb-rt · 8 h".</summary>
    public static string Message(StudyAnalysis analysis, DataQuery query) =>
        query.Scope is { } scope
        && analysis.Sequences.FirstOrDefault(sequence =>
            (sequence.Analyte, sequence.Group, sequence.Storage)
            == (scope.Analyte, scope.Group, scope.Storage)
        )
            is { } sequence
            ? $"{SequenceNames.Of(analysis, sequence).Code(analysis)}{(scope.TimePoint is { } timePoint ? $" at {timePoint}" : "")}: {query.Text}"
            : query.Message;

    private static string Name(StudyAnalysis analysis, Cell cell, PairRecord pair)
    {
        var analyte = analysis.Protocol.Analytes.Length > 1 ? cell.Key.Analyte + " " : "";
        return $"{analyte}{pair.Specimen} at {cell.Key.TimePoint}";
    }
}
