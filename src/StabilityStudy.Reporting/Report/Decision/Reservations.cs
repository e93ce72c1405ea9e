using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Drift;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Report.Decision;

/// <summary>
/// What speaks against the conclusion of a row or limits it, the gravest first. What contradicts a supported window comes before what limits it; nothing is merged to save a line.
/// </summary>
internal static class Reservations
{
    /// <summary>What page 1 says in places of its own, whatever the row.</summary>
    private static bool IsElsewhere(DataQuery query) =>
        query.Rank
            is QueryRank.Source
                or QueryRank.Outlier
                or QueryRank.CountedOutside
                or QueryRank.ShorterThanToday
                or QueryRank.EarlyChange
                or QueryRank.Confounding;

    /// <summary>The reservations of a sequence.</summary>
    public static ImmutableArray<Reservation> Of(StudyAnalysis analysis, Sequence sequence)
    {
        var names = SequenceNames.Of(analysis, sequence);
        var deciding = Deciding(sequence);
        ImmutableArray<Reservation> all =
        [
            .. EarlyChanges(analysis, sequence),
            .. Drifts(sequence),
            .. Crossings(deciding, names),
            .. SensitivityToOneSpecimen.Of(sequence),
            .. Confounded(analysis, sequence, deciding),
            .. Queries(analysis, sequence, deciding),
            .. OfAllRows(analysis),
            .. Manufacturer(sequence, names),
            .. Today(sequence, names),
        ];
        return [.. all.Where(item => item.Contradicts), .. all.Where(item => !item.Contradicts)];
    }

    /// <summary>The supported time points and the first that is not.</summary>
    public static ImmutableArray<Cell> Deciding(Sequence sequence) =>
        [
            .. sequence.Cells.Take(
                1
                    + sequence
                        .Cells.TakeWhile(cell => cell.Conclusion == Conclusion.Supported)
                        .Count()
            ),
        ];

    private static IEnumerable<Reservation> EarlyChanges(StudyAnalysis analysis, Sequence sequence)
    {
        if (
            analysis.Queries.Any(query =>
                query.Kind == SequenceQueries.ChangeBeforeBaseline && IsOf(query, sequence)
            ) && EarlyChange.Of(sequence) is { } early
        )
        {
            var minutes = NumberText.Fixed(early.BaselineMinutes, 0);
            var reached = string.Join(
                " and ",
                early.Reached.Select(place =>
                    $"{NumberText.ChangeAgainstLimits(place.Percent, -early.LimitPercent, early.LimitPercent, 2)} % at {place.TimePoint}"
                )
            );
            yield return new(
                $"The first {minutes} minutes were not measured.",
                $"Baselines were tested {minutes} min after {OriginWords.Start(analysis.Protocol.TimeOrigin)}. If the fitted curve also holds before that, the interval reaches {reached}: past the limit.",
                Contradicts: true
            );
        }
    }

    private static IEnumerable<Reservation> Drifts(Sequence sequence) =>
        DriftRemarks.First(sequence) is { } first
            ?
            [
                new(
                    $"The drift may reach the limit before {DurationText.FormatWindow(sequence.Window!.Time)}.",
                    $"A one-sided 95 % bound of {first.Curve} leaves the limit at {DurationText.FormatComputed(first.Hours)}.",
                    Contradicts: true
                ),
            ]
            : [];

    /// <summary>Changes of side, each harm told where a result first moved to that side of the level.</summary>
    private static IEnumerable<Reservation> Crossings(
        ImmutableArray<Cell> deciding,
        SequenceNames names
    )
    {
        ImmutableArray<(Cell Cell, SideChange Change)> crossings =
        [
            .. deciding
                .Where(cell => cell.Conclusion != Conclusion.NotAssessed)
                .SelectMany(cell =>
                    cell.SideChanges.Where(change => change.IsBeyondNoise)
                        .OrderByDescending(change => (double)change.Changed / change.Counted)
                        .Select(change => (cell, change))
                ),
        ];
        return crossings.Select(
            (item, place) =>
                SideChangeWords.Reservation(
                    item.Cell,
                    item.Change,
                    [
                        .. crossings
                            .Take(place)
                            .Select(earlier => earlier.Change)
                            .Where(earlier => earlier.Level == item.Change.Level),
                    ],
                    names
                )
        );
    }

    private static IEnumerable<Reservation> Confounded(
        StudyAnalysis analysis,
        Sequence sequence,
        ImmutableArray<Cell> deciding
    ) =>
        from query in analysis.Queries
        where query.Rank == QueryRank.Confounding && IsOf(query, sequence)
        let time = query.Scope?.TimePoint
        where time is null || deciding.Any(cell => cell.Key.TimePoint == time)
        let isSupported = time is null
            ? sequence.Window is not null
            : deciding.Any(cell =>
                cell.Key.TimePoint == time && cell.Conclusion == Conclusion.Supported
            )
        group time by (query.Kind, isSupported) into kind
        select new Reservation(
            kind.First() is null
                ? kind.Key.Kind.Point ?? ""
                : AtTimes(kind.Key.Kind.Point ?? "", string.Join(" and ", kind)),
            kind.First() is null
                ? TradeWords.Capital(kind.Key.Kind.Meaning) + "."
                : "Its effect cannot be told from that of the delay.",
            kind.Key.isSupported
        );

    /// <summary>"Another operator tested every 12 h tube."</summary>
    private static string AtTimes(string point, string times) =>
        point.Replace("delayed tube", times + " tube", StringComparison.Ordinal);

    /// <summary>Every other query about the sequence and its deciding time points, in its own words.</summary>
    private static IEnumerable<Reservation> Queries(
        StudyAnalysis analysis,
        Sequence sequence,
        ImmutableArray<Cell> deciding
    ) =>
        from query in analysis.Queries
        where
            query is { Severity: Severity.Attention, Scope: not null, Specimen: null }
            && !IsElsewhere(query)
            && IsOf(query, sequence)
            && (
                query.Scope.TimePoint is not { } time
                || deciding.Any(cell => cell.Key.TimePoint == time)
            )
        // How many were left out stands beside the figures, and a modified test has words of its own.
        where query.Rank != QueryRank.StatedAnyway || query.Kind.Point is not null
        group query by query.Kind into kind
        orderby kind.Key.Rank == QueryRank.StatedAnyway ? QueryRank.Exclusion : kind.Key.Rank
        select new Reservation(
            kind.Key.Point ?? "",
            InWords([.. kind]),
            kind.Key.Rank is QueryRank.StatedAnyway or QueryRank.Exclusion
                && sequence.Window is not null
        );

    /// <summary>A query about the whole study that has a point of its own, such as runs that no control vouches for.</summary>
    private static IEnumerable<Reservation> OfAllRows(StudyAnalysis analysis) =>
        from query in analysis.Queries
        where IsInRows(analysis, query)
        select new Reservation(query.Kind.Point!, query.Text, Contradicts: false);

    /// <summary>Whether a query about the study as a whole is counted among the reservations of each row; with more rows it stands once among what page 1 says of the study.</summary>
    public static bool IsInRows(StudyAnalysis analysis, DataQuery query) =>
        analysis.Sequences.Length <= DecisionRows.MostWithAllTimes
        && query
            is {
                Severity: Severity.Attention,
                Scope: null,
                Kind: { Rank: QueryRank.Control, Point: not null }
            };

    /// <summary>Of a kind at several time points the words of the last: the window ends there.</summary>
    private static string InWords(ImmutableArray<DataQuery> kind)
    {
        var last = kind[^1];
        return last.Scope?.TimePoint is null ? TradeWords.Capital(last.Text)
            : kind.Length == 1 ? $"At {last.Scope.TimePoint}: {last.Text}"
            : kind.All(query => query.Text == last.Text)
                ? $"At {ScopeWords.List(kind.Select(query => $"{query.Scope!.TimePoint}"))}: {last.Text}"
            : $"At {last.Scope.TimePoint}, the last of {string.Join(", ", kind.Select(query => query.Scope!.TimePoint))}: {last.Text}";
    }

    private static IEnumerable<Reservation> Manufacturer(Sequence sequence, SequenceNames names) =>
        (sequence.Window, names.Analyte.ManufacturerLimit) switch
        {
            ({ ManufacturerLimit: ManufacturerStanding.Beyond }, { } limit) =>
            [
                new(
                    $"Longer than the manufacturer's limit of {DurationText.Format(limit.Time)}:",
                    "a modified test.",
                    Contradicts: false
                ),
            ],
            _ => [],
        };

    /// <summary>That the protocol states no manufacturer's limit for some analytes, once for all rows; null where each has one.</summary>
    public static string? WithoutManufacturersLimit(StudyAnalysis analysis)
    {
        var silent = analysis
            .Protocol.Analytes.Where(analyte => analyte.ManufacturerLimit is null)
            .Select(analyte => analyte.Id)
            .ToImmutableArray();
        return silent.IsEmpty
            ? null
            : $"No manufacturer's limit is stated{(silent.Length == analysis.Protocol.Analytes.Length ? "" : " for " + ScopeWords.List(silent))}: a longer window may be a modified test{(silent.Length == analysis.Protocol.Analytes.Length ? "" : " there")}.";
    }

    /// <summary>Today's window is confirmed only where this study tested it and supports it.</summary>
    private static IEnumerable<Reservation> Today(Sequence sequence, SequenceNames names)
    {
        if (sequence.Window is not null || sequence.Cells.IsEmpty)
        {
            yield break;
        }

        var standard = names.Analyte.StandardWindowOf(names.Group.Id, names.Storage.Id).Time;
        var time = DurationText.Format(standard);
        yield return sequence.Cells.FirstOrDefault(cell => cell.Key.TimePoint.Delay == standard)
            is { } tested
            ? new($"Today's {time} was tested:", $"{TradeWords.Of(tested.Conclusion)}.", false)
            : new($"Today's {time} was not tested", "and is not confirmed by this study.", false);
    }

    private static bool IsOf(DataQuery query, Sequence sequence) =>
        query.Scope is { } scope
        && (scope.Analyte, scope.Group, scope.Storage)
            == (sequence.Analyte, sequence.Group, sequence.Storage);
}
