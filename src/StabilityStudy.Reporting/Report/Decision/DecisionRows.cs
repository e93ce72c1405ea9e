using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>The rows of Table 1: the conclusions with evidence, reservations and the place of the decision.</summary>
internal static class DecisionRows
{
    /// <summary>With more rows each shows the last supported time point and the next alone.</summary>
    public const int MostWithAllTimes = 3;

    /// <summary>So many places for a decision a page holds in a grid, beside what else page 1 must say.</summary>
    private const int MostDecidedInRows = 72;

    public static DecisionTable Of(StudyAnalysis analysis)
    {
        var rows = ConcludedWindow
            .Of(analysis)
            .GroupBy(row => (row.Analyte, row.Group, row.Storage))
            .SelectMany(rows => rows.Select((row, part) => (row, part)))
            .Select((item, number) => Row(analysis, item.row, item.part, number))
            .ToImmutableArray();
        return new(
            Head(analysis),
            [.. rows.Select(item => item.Row).OrderBy(Gravity)],
            string.Join(
                " ",
                new[] { OriginWords.InBrief(analysis), ReadingMarks.Key(analysis) }.OfType<string>()
            )
        )
        {
            IsDecidedInRows = IsDecidedInRows(analysis),
            Contradictions =
            [
                .. from row in rows
                from item in row.Row.Reservations
                where item.Contradicts
                group row.Code by item.InBrief() into point
                select $"{point.Key} ({string.Join(", ", point.Distinct())})",
            ],
        };
    }

    /// <summary>Whether page 1 holds a place for the decision on each row: one person decides, and a page holds them.</summary>
    public static bool IsDecidedInRows(StudyAnalysis analysis) =>
        analysis.Protocol.Signatories.Count(analysis.Protocol.Decides) == 1
        && ConcludedWindow.Of(analysis).Length <= MostDecidedInRows;

    /// <summary>How many of the questions were answered how, where there are too many rows to see it.</summary>
    public static string? Count(StudyAnalysis analysis)
    {
        var rows = ConcludedWindow.Of(analysis);
        if (rows.Length <= MostWithAllTimes)
        {
            return null;
        }

        var longer = rows.Count(row => row.Supported > row.Today);
        var notLonger = rows.Count(row => row.Supported <= row.Today);
        var none = rows.Count(row => row.Supported is null);
        string[] parts =
        [
            .. longer == 0 ? [] : new[] { $"{Counted.Of(longer, "longer window")} supported" },
            .. notLonger == 0
                ? []
                : new[] { $"{Counted.Of(notLonger, "window")} supported, not longer than today's" },
            .. none == 0 ? [] : new[] { $"{NumberText.Count(none)} without support" },
        ];
        return $"{NumberText.Count(rows.Length)} questions: {string.Join("; ", parts)}.";
    }

    /// <summary>Not supported and shorter than today come first, then what is supported and contradicted; inside each the order of the protocol.</summary>
    private static int Gravity(DecisionRow row) =>
        row.Shape is VerdictShape.NotSupported or VerdictShape.ShorterThanToday ? 0
        : row.Shape == VerdictShape.Supported && row.Reservations.Any(item => item.Contradicts) ? 1
        : 2;

    /// <summary>A row, and whose it is as short as can be: "aPTT ufh".</summary>
    private static (string Code, DecisionRow Row) Row(
        StudyAnalysis analysis,
        ConcludedWindow row,
        int place,
        int number
    )
    {
        var sequence = analysis.Sequences.First(item =>
            (item.Analyte, item.Group, item.Storage) == (row.Analyte, row.Group, row.Storage)
        );
        var part = row.IsOfOneInstrument ? sequence.Parts[place] : null;
        var names = SequenceNames.Of(analysis, sequence);
        var times = Times(sequence, part);
        var reservations = Reservations.Of(analysis, sequence);
        var shape = ShapeOf(row, times);
        var name = NameOf(analysis, sequence, names, part);
        var conclusion = ConclusionOf(row, shape, times, reservations.Length);
        var code =
            $"{names.Analyte.Id} {names.Group.Id}{(analysis.Protocol.Storages.Length > 1 ? " " + names.Storage.Id : "")}{(part is null ? "" : " " + part.Code)}";
        var decided = new DecisionRow(
            number,
            name,
            shape,
            conclusion,
            FactsOf(analysis, sequence, row, names),
            [.. Shown(analysis, times).Select(time => Line(time, names, analysis.Protocol))],
            [.. Remarks(sequence, part, names, analysis.Protocol)],
            reservations,
            row.Supported is null ? "today's rule stays, or shorter" : "a window, or \"declined\"",
            BriefOf(name, conclusion, reservations)
        )
        {
            Subject = names.Title(analysis),
            Code =
                $"{code}: {(row.Supported is { } supported ? DurationText.FormatWindow(supported) : TradeWords.Of(FirstOpen(times)?.Conclusion ?? Conclusion.NotAssessed))}",
            DecideNow =
                shape == VerdictShape.ShorterThanToday
                    ? $"an interim rule of at most {DurationText.FormatWindow(row.Supported!.Value)} in place of today's {DurationText.Format(row.Today)}, and a look back at results already reported beyond it."
                    : null,
        };
        return (code, decided);
    }

    private static string NameOf(
        StudyAnalysis analysis,
        Sequence sequence,
        SequenceNames names,
        ScopePart? part
    )
    {
        var protocol = analysis.Protocol;
        var analyte =
            protocol.Analytes.Length == 1 ? ""
            : names.Analyte.Name.Length <= LongestName ? names.Analyte.Name + ", "
            : names.Analyte.Id + ", ";
        var group =
            analyte.Length == 0 ? names.Group.Name : TradeWords.InSentence(names.Group.Name);
        var storage = protocol.Storages.Length > 1 ? $"; {TradeWords.Of(names.Storage)}" : "";
        var on =
            part is not null ? $", on {ScopeWords.Of(part.Code)}"
            : sequence.Parts.IsEmpty ? ""
            : $", on each of {ScopeWords.List(sequence.Parts.Select(item => item.Code))}";
        return analyte + group + storage + on;
    }

    private const int LongestName = 22;
    private const int MostNamed = 3;

    private static VerdictShape ShapeOf(ConcludedWindow row, ImmutableArray<Time> times) =>
        row.Supported is { } window
            ? window < row.Today
                ? VerdictShape.ShorterThanToday
                : VerdictShape.Supported
            : times.IsEmpty
                ? VerdictShape.NotAssessed
                : FirstOpen(times) is { } open
                    ? TradeWords.ShapeOf(open.Conclusion)
                    : VerdictShape.NotAssessed;

    private static string ConclusionOf(
        ConcludedWindow row,
        VerdictShape shape,
        ImmutableArray<Time> times,
        int reservations
    )
    {
        if (row.Supported is { } window)
        {
            var shorter = shape == VerdictShape.ShorterThanToday ? ", shorter than today" : "";
            var counted =
                reservations == 0 ? "" : $", with {Counted.Of(reservations, "reservation")}";
            return $"Supported to {DurationText.FormatWindow(window)}{shorter}{counted}";
        }

        return FirstOpen(times) is { } open
            ? $"{TradeWords.Capital(TradeWords.Of(open.Conclusion))} at {open.TimePoint}"
            : "Not assessed";
    }

    private static string FactsOf(
        StudyAnalysis analysis,
        Sequence sequence,
        ConcludedWindow row,
        SequenceNames names
    )
    {
        var limit =
            ConcludedWindow.Of(analysis).Length > MostWithAllTimes
                ? Limits(sequence, names, analysis.Protocol)
                : null;
        var range = StudiedRange.Of(sequence, names);
        var levels = SideChangeWords.NotTested(sequence, names);
        string?[] parts =
        [
            $"Today's rule: {DurationText.Format(row.Today)}"
                + (limit is null ? "." : $". Limit {limit}."),
            range is null ? null
            : levels is null ? $"Baselines {range}."
            : $"Baselines {range}; little or nothing is known at {levels}.",
            FirstPage.SharedReagents(analysis) is null && Reagents(row) is { } reagents
                ? reagents + "."
                : null,
            PortionTimes.Of(sequence) is { } times && PortionTimes.Shared(analysis) is null
                ? TradeWords.Capital(times) + "."
                : null,
        ];
        return string.Join(" ", parts.OfType<string>());
    }

    private static string? Limits(Sequence sequence, SequenceNames names, StudyProtocol protocol)
    {
        string[] all =
        [
            .. sequence
                .Cells.SelectMany(cell => cell.Criteria)
                .OfType<BiasResult>()
                .Select(bias => new BiasWords(bias, names, protocol).AllowedInBrief)
                .Distinct(),
        ];
        return all.Length == 0 ? null : string.Join(" or ", all);
    }

    /// <summary>"lot R-2601, AN1".</summary>
    public static string? Reagents(ConcludedWindow row)
    {
        string[] parts =
        [
            .. row.Reagents.IsEmpty
                ? []
                : new[]
                {
                    (row.Reagents.Length == 1 ? "reagent lot " : "reagent lots ")
                        + ScopeWords.List(row.Reagents),
                },
            .. row.Instruments.IsEmpty
                ? []
                : new[]
                {
                    (row.Instruments.Length == 1 ? "analyzer " : "analyzers ")
                        + ScopeWords.List(row.Instruments),
                },
        ];
        return parts.Length == 0 ? null : string.Join(" on ", parts);
    }

    private static string BriefOf(
        string name,
        string conclusion,
        ImmutableArray<Reservation> reservations
    )
    {
        var contradicting = reservations
            .Where(item => item.Contradicts)
            .Select(item => item.InBrief())
            .Distinct()
            .ToImmutableArray();
        return string.Join(" ", contradicting.Prepend($"{name}: {conclusion}."));
    }

    private static ImmutableArray<Time> Times(Sequence sequence, ScopePart? part) =>
        part is null
            ?
            [
                .. sequence.Cells.Select(cell => new Time(
                    cell.Key.TimePoint,
                    cell.Conclusion,
                    cell.Criteria
                )),
            ]
            :
            [
                .. part.TimePoints.Select(item => new Time(
                    item.TimePoint,
                    item.Conclusion,
                    item.Criteria
                )),
            ];

    private static Time? FirstOpen(ImmutableArray<Time> times) =>
        times.FirstOrDefault(time => time.Conclusion != Conclusion.Supported);

    private static IEnumerable<Time> Shown(StudyAnalysis analysis, ImmutableArray<Time> times)
    {
        if (analysis.Sequences.Length <= MostWithAllTimes)
        {
            return times;
        }

        var supported = times.TakeWhile(time => time.Conclusion == Conclusion.Supported).Count();
        return times.Skip(Math.Max(0, supported - 1)).Take(supported == 0 ? 1 : 2);
    }

    private static EvidenceLine Line(Time time, SequenceNames names, StudyProtocol protocol)
    {
        var change = time.Criteria.OfType<BiasResult>().FirstOrDefault() is { } bias
            ? new BiasWords(bias, names, protocol).DecidingFigure.Replace(
                "of the allowance",
                "× limit",
                StringComparison.Ordinal
            ) + ReadingMarks.Of(bias.Reading)
            : "no mean judged";
        var shares = time
            .Criteria.Where(result => result is IndividualResult or ClassificationResult)
            .SelectMany(result =>
                CriterionWords
                    .Of(result, names, protocol)
                    .Figures(withLimits: false)
                    .Select(figure =>
                        figure.Found + ReadingMarks.Of(ReadingMarks.ReadingOf(result))
                    )
            )
            .ToImmutableArray();
        return new(
            time.TimePoint.ToString(),
            change,
            shares.IsEmpty ? "no share judged" : string.Join("\n", shares),
            TradeWords.ShapeOf(time.Conclusion),
            TradeWords.Of(time.Conclusion),
            time.Conclusion is Conclusion.NotReached or Conclusion.NotAssessed
        );
    }

    /// <summary>Why the first time point that is not supported is not, and how many were left out.</summary>
    private static IEnumerable<string> Remarks(
        Sequence sequence,
        ScopePart? part,
        SequenceNames names,
        StudyProtocol protocol
    )
    {
        var open = sequence.Cells.FirstOrDefault(cell => cell.Conclusion != Conclusion.Supported);
        if (
            part is null
            && open is not null
            && DecidingReason.Of(open, names, protocol, withFigures: false)
                is { Length: > 0 } reason
        )
        {
            yield return $"{open.Key.TimePoint}: {reason}.";
        }

        if (part is not null)
        {
            yield return TradeWords.Capital(ScopeWords.Standing(part)) + ".";
        }

        var outside = Reservations
            .Deciding(sequence)
            .Select(CountedOutside)
            .Where(text => text.Length > 0)
            .ToImmutableArray();
        if (!outside.IsEmpty)
        {
            yield return $"Counted as outside the limit: {string.Join("; ", outside)}.";
        }

        var leftOut = sequence
            .Cells.Select(LeftOut.InWords)
            .Where(text => text.Length > 0)
            .ToImmutableArray();
        if (!leftOut.IsEmpty)
        {
            yield return $"Left out: {string.Join("; ", leftOut)}.";
        }
    }

    /// <summary>"8 h N-012 (delayed tube failed)"; empty without a loss.</summary>
    private static string CountedOutside(Cell cell)
    {
        string[] parts =
        [
            .. Names(PairStatus.Failed, "delayed tube failed"),
            .. Names(PairStatus.NoDelayedResult, "no delayed result"),
        ];
        return parts.Length == 0 ? "" : $"{cell.Key.TimePoint} {string.Join(", ", parts)}";

        IEnumerable<string> Names(PairStatus status, string why)
        {
            var names = cell
                .Pairs.Where(pair => pair.Status == status)
                .Select(pair => pair.Specimen)
                .ToArray();
            return names.Length switch
            {
                0 => [],
                <= MostNamed => [$"{string.Join(", ", names)} ({why})"],
                _ => [$"{NumberText.Count(names.Length)} specimens ({why})"],
            };
        }
    }

    private static EvidenceHead Head(StudyAnalysis analysis)
    {
        var results = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Criteria)
            .ToImmutableArray();
        var levels = results
            .OfType<BiasResult>()
            .Select(bias => NumberText.Percent(bias.ConfidenceLevel))
            .Distinct()
            .ToImmutableArray();
        var limits = analysis
            .Sequences.Select(sequence =>
                Limits(sequence, SequenceNames.Of(analysis, sequence), analysis.Protocol)
            )
            .OfType<string>()
            .Distinct()
            .ToImmutableArray();
        var shares = results
            .OfType<IndividualResult>()
            .Select(item => item.RequiredShare)
            .Distinct()
            .Order()
            .ToImmutableArray();
        var near = (
            from sequence in analysis.Sequences
            from cell in sequence.Cells
            from result in cell.Criteria.OfType<IndividualResult>()
            select InBrief(result.Limit, SequenceNames.Of(analysis, sequence))
        )
            .Distinct()
            .ToImmutableArray();
        return new(
            "Waited",
            $"Mean change{(levels.IsEmpty ? "" : $" ({string.Join(" or ", levels)} interval)")}{(limits is [var limit] ? $"; limit {limit}" : "")}",
            $"Within {(near is [var one] ? one : "their limit")}; share shown{(shares.IsEmpty ? "" : $" ({string.Join(" or ", shares[..^1].Select(share => (100 * share).ToString("0.##", CultureInfo.InvariantCulture)).Append(NumberText.Percent(shares[^1])))} required)")}",
            "Conclusion"
        );
    }

    /// <summary>"15 % or 2 s".</summary>
    private static string InBrief(Limit limit, SequenceNames names)
    {
        string?[] parts =
        [
            limit.Percent is { } percent ? $"{NumberText.Plain(percent)} %" : null,
            limit.AbsoluteInUnit is { } amount
                ? $"{NumberText.Plain(amount)} {names.Analyte.ShownUnit}"
                : null,
        ];
        return string.Join(" or ", parts.OfType<string>());
    }

    private sealed record Time(
        TimePoint TimePoint,
        Conclusion Conclusion,
        ImmutableArray<CriterionResult> Criteria
    );
}
