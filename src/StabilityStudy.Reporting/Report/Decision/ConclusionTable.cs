using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>The conclusions of all cells with the figures of every criterion; a cell with several of a kind takes several rows, unless it was not reached.</summary>
internal static class ConclusionTable
{
    public static Table Of(StudyAnalysis analysis) =>
        new(
            "Conclusions by patient group and time point",
            [
                new Column("Time", ColumnAlignment.Left, 0.65),
                new Column("Counted", ColumnAlignment.Left, 1.7),
                new Column("Mean change (interval)", ColumnAlignment.Left, 2.95),
                new Column("Allowable bias", ColumnAlignment.Left, 1.2),
                new Column("Within limit (bound)", ColumnAlignment.Left, 2.1),
                new Column("Required", ColumnAlignment.Left, 0.9),
                new Column("Conclusion", ColumnAlignment.Left, 1.55),
            ],
            [.. analysis.Sequences.SelectMany(sequence => Rows(analysis, sequence))],
            Note(analysis)
        )
        {
            IsOfConclusions = true,
        };

    private static IEnumerable<Row> Rows(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var limits = sequence
            .Cells.SelectMany(cell => cell.Criteria)
            .OfType<IndividualResult>()
            .Select(item => CriterionWords.Shortened(item.Limit, names))
            .Distinct()
            .ToImmutableArray();
        var shared = limits.Length == 1 ? $" · limit of a single specimen {limits[0]}" : "";
        var studied = StudiedRange.Of(sequence, names) is { } range
            ? $" · baselines {range}{(SideChangeWords.NotTested(sequence, names) is { } levels ? $", not tested at {levels}" : "")}"
            : "";
        yield return new Row(
            [new TableCell(names.Title(analysis) + shared + studied)],
            RowKind.GroupHeading
        );
        foreach (
            var row in sequence.Cells.SelectMany(cell =>
                Rows(cell, names, analysis.Protocol, withLimits: limits.Length > 1)
            )
        )
        {
            yield return row;
        }
    }

    private static IEnumerable<Row> Rows(
        Cell cell,
        SequenceNames names,
        StudyProtocol protocol,
        bool withLimits
    )
    {
        var figures = cell
            .Criteria.SelectMany(result =>
                CriterionWords.Of(result, names, protocol).Figures(withLimits)
            )
            .ToLookup(figure => figure.IsShare);
        var (changes, shares) = (
            figures[false].ToImmutableArray(),
            figures[true].ToImmutableArray()
        );
        // What no control vouches for, and what an earlier time point ended, is shown and does not count.
        var reached = cell.Conclusion is not (Conclusion.NotReached or Conclusion.NotAssessed);
        var emphasis = reached ? Emphasis.None : Emphasis.Muted;
        // A time point that was not reached has its further figures on its own page: what decides must stay on page 1.
        var rows =
            cell.Conclusion == Conclusion.NotReached
                ? 1
                : Math.Max(1, Math.Max(changes.Length, shares.Length));
        for (var i = 0; i < rows; i++)
        {
            yield return new Row([
                new TableCell(i == 0 ? cell.Key.TimePoint.ToString() : ""),
                new TableCell(i == 0 ? LeftOut.CountedOfReceived(cell) : "", emphasis),
                .. Cells(changes, i, emphasis, reached),
                .. Cells(shares, i, emphasis, reached),
                i == 0
                    ? new TableCell(
                        TradeWords.Of(cell.Conclusion),
                        reached ? Emphasis.Strong : Emphasis.Muted,
                        TradeWords.ShapeOf(cell.Conclusion)
                    )
                    : new TableCell(""),
            ]);
        }
    }

    /// <summary>A shape stands before a figure that is not met or leaves its criterion open.</summary>
    private static TableCell[] Cells(
        ImmutableArray<CriterionFigure> figures,
        int index,
        Emphasis emphasis,
        bool reached
    )
    {
        if (index >= figures.Length)
        {
            return
            [
                new TableCell(index == 0 ? "no criterion" : "", emphasis),
                new TableCell("", emphasis),
            ];
        }

        var figure = figures[index];
        var decides = reached && figure.Shape != VerdictShape.Supported;
        return
        [
            decides
                ? new TableCell(figure.Found, Emphasis.Strong, figure.Shape)
                : new TableCell(figure.Found, emphasis),
            new TableCell(figure.Required, emphasis),
        ];
    }

    private static string Note(StudyAnalysis analysis)
    {
        var results = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Criteria)
            .ToImmutableArray();
        var intervals = Levels(results.OfType<BiasResult>().Select(bias => bias.ConfidenceLevel));
        var bounds = Levels(
            results.OfType<IndividualResult>().Select(item => item.ConfidenceLevel)
        );
        var parts = new[]
        {
            $"Counted: for shares, of those received; the mean is of fewer where that is said. {OriginWords.InBrief(analysis)}",
            intervals.Length == 0
                ? null
                : $"Interval: {intervals}, spanning specimens, days, runs and persons, and lengthened for skewness.",
            bounds.Length == 0
                ? null
                : $"Bound: exact, one-sided {bounds}; failed counts as outside.{ShareInWords.Of(analysis)}",
            results.Any(result => CriterionWords.IsEstimateAlone(result, analysis.Protocol))
                ? "No error control: the figure alone was held to the limit."
                : null,
        };
        return string.Join(" ", parts.OfType<string>());
    }

    private static string Levels(IEnumerable<double> levels) =>
        string.Join(" or ", levels.Distinct().Order().Select(NumberText.Percent));
}
