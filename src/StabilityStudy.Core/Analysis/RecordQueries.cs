namespace StabilityStudy.Core.Analysis;

/// <summary>What was not recorded, although a rule depends on it.</summary>
public static class RecordQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    /// <summary>The fill is not always recorded.</summary>
    public static readonly QueryKind FillNotRecorded = Kinds.Add("fill-not-recorded", QueryRank.NotRecorded, "the fill is not recorded though the protocol asks for a least fill", "record the fill");
    internal static readonly QueryKind OriginNotRecorded = Kinds.Add("origin-not-recorded", QueryRank.NotRecorded, "the origin of specimens is not recorded", "record the origin");
    internal static readonly QueryKind InstrumentNotRecorded = Kinds.Add("instrument-not-recorded", QueryRank.NotRecorded, "the instrument of results is not recorded", "record the instrument");
    internal static readonly QueryKind LotNotRecorded = Kinds.Add("lot-not-recorded", QueryRank.NotRecorded, "the lot of results is not recorded", "record the lot");
    internal static readonly QueryKind SpunNotRecorded = Kinds.Add("spun-not-recorded", QueryRank.NotRecorded, "the time of spinning is not recorded though the protocol limits it", "record the time");
    internal static readonly QueryKind RunNotRecorded = Kinds.Add("run-not-recorded", QueryRank.Control, "results have no run, so no control can be shown for them", "record the run of each result");
    /// <summary>The hematocrit is not always recorded.</summary>
    public static readonly QueryKind HematocritNotRecorded = Kinds.Add("hematocrit-not-recorded", QueryRank.NotRecorded, "the hematocrit is not recorded although a rule depends on it", "record it");
    /// <summary>Whether there was a clot is not always recorded.</summary>
    public static readonly QueryKind ClotNotRecorded = Kinds.Add("clot-not-recorded", QueryRank.NotRecorded, "it is not recorded whether tubes had a clot although a rule depends on it", "record it");
    internal static readonly QueryKind HemolysisNotRecorded = Kinds.Add("hemolysis-not-recorded", QueryRank.NotRecorded, "hemolysis is not recorded although a rule depends on it", "record it");
    internal static readonly QueryKind CodesDeclared = Kinds.Add("codes-declared", QueryRank.Note, "codes look like record or telephone numbers, and somebody declared that they lead to nobody", "see that the declaration is true before the report leaves the laboratory");
    // csharpier-ignore-end

    private const int MostNamed = 12;

    private const string ChangesWithin =
        "a change of it within a pair cannot be told from the delay";

    /// <summary>The queries.</summary>
    /// <param name="rows">The study.</param>
    /// <param name="tubes">Those of its tubes of which everything should be recorded.</param>
    internal static IEnumerable<DataQuery> Of(StudyRows rows, ImmutableArray<TubeRow> tubes)
    {
        var inputs = rows.Inputs;
        var withHematocrit = tubes
            .Where(tube => tube.HematocritPercent is not null)
            .Select(tube => tube.Specimen)
            .ToHashSet();
        return
        [
            .. OfDeclaredCodes(inputs.Facts.CodesDeclared),
            .. inputs.Protocol.Eligibility.FillPercentMinimum is null
                ? []
                : OfTubes(
                    FillNotRecorded,
                    rows,
                    tubes,
                    "fill",
                    "fill_percent",
                    tube => tube.FillPercent is null,
                    "the protocol asks for a least fill, and a short fill prolongs clotting times"
                ),
            .. inputs.Protocol.Eligibility.HematocritPercentMaximum is null
                ? []
                : OfTubes(
                    HematocritNotRecorded,
                    rows,
                    tubes,
                    "hematocrit",
                    "hematocrit_percent",
                    tube => !withHematocrit.Contains(tube.Specimen),
                    "whether it lies above the protocol's highest, where citrate is in excess, was not checked"
                ),
            .. inputs.Protocol.Eligibility.RejectClot
                ? OfTubes(
                    ClotNotRecorded,
                    rows,
                    tubes,
                    "clot",
                    "clot",
                    tube => tube.Clot == ClotCheck.NotRecorded,
                    "the protocol rejects clotted tubes, and a tube nobody looked at may be one"
                )
                : [],
            .. OfTubes(
                HemolysisNotRecorded,
                rows,
                tubes,
                "hemolysis",
                "hemolysis",
                tube => tube.Hemolysis == Hemolysis.NotRecorded,
                "new hemolysis in a delayed tube counts as a failed tube"
            ),
            .. OfTubes(
                SpunNotRecorded,
                rows,
                tubes,
                "time of spinning",
                "spun_at",
                tube => tube.SpunAt is null && MustBeSpun(tube, rows),
                "without the time of spinning the state in which a tube waited is not known, and its result is left out"
            ),
            .. OfTubes(
                OriginNotRecorded,
                rows,
                tubes,
                "origin",
                "origin",
                tube => tube.Origin == Origin.NotRecorded,
                "spiked or pooled material does not stand for patients' blood"
            ),
            .. OfResults(
                InstrumentNotRecorded,
                inputs,
                "instrument",
                row => row.Instrument,
                ChangesWithin
            ),
            .. OfResults(LotNotRecorded, inputs, "lot", row => row.Lot, ChangesWithin),
            .. inputs.Protocol.Controls == ControlRule.KeptElsewhere
                ? []
                : OfResults(
                    RunNotRecorded,
                    inputs,
                    "run",
                    row => row.Run,
                    "every run needs a control, so what was tested in an unknown run is not assessed"
                ),
        ];
    }

    /// <summary>Whether the time of spinning of a tube decides: of delayed tubes always, of baseline tubes where the group limits it.</summary>
    private static bool MustBeSpun(TubeRow tube, StudyRows rows)
    {
        var isLimited = rows.Inputs.Protocol.Groups.Any(item =>
            item.Id == tube.Group && item.BaselineSpunWithin is not null
        );
        return rows.HasResult(
            tube,
            row => row.TestedAt is not null && (isLimited || !row.Occasion.IsBaseline)
        );
    }

    private static IEnumerable<DataQuery> OfDeclaredCodes(Study.DeclaredCodes? declared) =>
        declared is null
            ? []
            :
            [
                new(
                    CodesDeclared,
                    new("study.toml", declared.Line, "codes_declared"),
                    declared.By,
                    $"Codes that look like record or telephone numbers are declared to lead to nobody: {declared.Reason}"
                ),
            ];

    private static IEnumerable<DataQuery> OfTubes(
        QueryKind kind,
        StudyRows rows,
        ImmutableArray<TubeRow> tubes,
        string name,
        string column,
        Func<TubeRow, bool> isMissing,
        string why
    )
    {
        var missing = tubes.Where(isMissing).ToImmutableArray();
        return FoundRows.OfTubes(
            kind,
            column,
            missing,
            () =>
                $"The {name} is not recorded for {Counted.Of(missing.Length, IsOfBaselines(missing, rows) ? "baseline tube" : "tube")}{Of(missing)}: {why}.",
            $"Record the {name}."
        );
    }

    /// <summary>" of N-005 and N-008"; more specimens than a reader takes in are counted.</summary>
    private static string Of(ImmutableArray<TubeRow> tubes)
    {
        string[] specimens =
        [
            .. tubes
                .Select(tube => tube.Specimen)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];
        return " of "
            + (
                specimens.Length > MostNamed
                    ? Counted.Of(specimens.Length, "specimen")
                    : string.Join(", ", specimens)
            );
    }

    /// <summary>Whether every such tube was tested as a baseline: a sheet of pairs has other columns for these.</summary>
    private static bool IsOfBaselines(ImmutableArray<TubeRow> tubes, StudyRows rows) =>
        !tubes.Any(tube => rows.HasResult(tube, row => !row.Occasion.IsBaseline));

    private static IEnumerable<DataQuery> OfResults(
        QueryKind kind,
        StudyInputs inputs,
        string column,
        Func<ResultRow, string> of,
        string why
    )
    {
        var missing = inputs
            .Results.Where(row => row.Result is not MissingResult && of(row).Length == 0)
            .ToImmutableArray();
        return FoundRows.OfResults(
            kind,
            column,
            missing,
            () =>
                $"The {column} is not recorded for {Counted.Of(missing.Length, "result")}: {why}.",
            $"Record the {column}."
        );
    }
}
