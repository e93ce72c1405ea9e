using StabilityStudy.Core.Criteria.Individual;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>The way from each conclusion to its specimens and their lines in the laboratory's own file.</summary>
internal static class SpecimenTrail
{
    private const int MostNamed = 12;

    public static Table Of(StudyAnalysis analysis) =>
        new(
            $"From each conclusion to its specimens in {analysis.Facts.Files.Results}",
            [
                new Column("Time", ColumnAlignment.Left, 0.8),
                new Column("Conclusion", ColumnAlignment.Left, 1.6),
                new Column("By", ColumnAlignment.Left, 2.2),
                new Column("Outside, failed or undecidable", ColumnAlignment.Left, 5.6),
            ],
            [.. analysis.Sequences.SelectMany(sequence => Lines(analysis, sequence))],
            $"By: the criteria that made the conclusion. A mean is computed from every compared pair; \"{PairSection.Title}\" lists them, with their lines in a report made with --full and in the HTML."
        );

    private static IEnumerable<Row> Lines(StudyAnalysis analysis, Sequence sequence)
    {
        yield return new Row(
            [new TableCell(SequenceNames.Of(analysis, sequence).Title(analysis))],
            RowKind.GroupHeading
        );
        foreach (var cell in sequence.Cells)
        {
            var outside = cell
                .Criteria.OfType<IndividualResult>()
                .Select(result => Outside(result, cell))
                .Distinct(StringComparer.Ordinal);
            yield return new Row([
                new TableCell(cell.Key.TimePoint.ToString()),
                new TableCell(
                    TradeWords.Of(cell.Conclusion),
                    Emphasis.Strong,
                    TradeWords.ShapeOf(cell.Conclusion)
                ),
                new TableCell(By(cell)),
                new TableCell(string.Join("; ", outside)),
            ]);
        }
    }

    private static string By(Cell cell)
    {
        if (cell.Conclusion is Conclusion.NotReached or Conclusion.NotAssessed)
        {
            return cell.Conclusion == Conclusion.NotReached
                ? "an earlier time point"
                : "see its page";
        }

        var verdict = cell.Conclusion switch
        {
            Conclusion.Supported => Verdict.Met,
            Conclusion.NotSupported => Verdict.NotMet,
            Conclusion.Inconclusive or Conclusion.NotAssessed or Conclusion.NotReached =>
                Verdict.Inconclusive,
        };
        string[] by =
        [
            .. cell
                .Criteria.Where(result => result.Verdict == verdict)
                .Select(result => result.Criterion),
            .. cell.Doubts.IsEmpty ? [] : new[] { "a doubt on its page" },
        ];
        return string.Join(", ", by);
    }

    /// <summary>The specimens that count as outside, with their lines where they are few.</summary>
    public static string Outside(IndividualResult individual, Cell cell)
    {
        var outside = individual.Agreement.OutsideSpecimens;
        return outside.IsEmpty ? "none"
            : outside.Length > MostNamed
                ? $"{NumberText.Count(outside.Length)}, marked under \"{PairSection.Title}\""
            : string.Join(", ", outside.Select(specimen => WithLines(specimen, cell)));
    }

    /// <summary>"N-034 (lines 131, 267)": the lines in the laboratory's own file.</summary>
    private static string WithLines(string specimen, Cell cell)
    {
        var pair = cell.Pairs.First(item => item.Specimen == specimen);
        int[] lines =
        [
            .. new[] { pair.Baseline?.SourceRow, pair.Delayed?.SourceRow }.OfType<int>(),
        ];
        return lines.Length == 0
            ? specimen
            : $"{specimen} ({(lines.Length == 1 ? "line" : "lines")} {string.Join(", ", lines.Select(SourceLines.Words))})";
    }
}
