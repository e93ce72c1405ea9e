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

    internal static IEnumerable<DataQuery> Of(StudyInputs inputs)
    {
        var withHematocrit = inputs
            .Tubes.Where(tube => tube.HematocritPercent is not null)
            .Select(tube => tube.Specimen)
            .ToHashSet();
        var mustBeSpun = MustBeSpun(inputs);
        return
        [
            .. OfDeclaredCodes(inputs.Facts.CodesDeclared),
            .. inputs.Protocol.Eligibility.FillPercentMinimum is null
                ? []
                : OfTubes(
                    FillNotRecorded,
                    inputs,
                    "fill",
                    "fill_percent",
                    tube => tube.FillPercent is null,
                    "the protocol asks for a least fill, and a short fill prolongs clotting times"
                ),
            .. inputs.Protocol.Eligibility.HematocritPercentMaximum is null
                ? []
                : OfTubes(
                    HematocritNotRecorded,
                    inputs,
                    "hematocrit",
                    "hematocrit_percent",
                    tube => !withHematocrit.Contains(tube.Specimen),
                    "whether it lies above the protocol's highest, where citrate is in excess, was not checked"
                ),
            .. inputs.Protocol.Eligibility.RejectClot
                ? OfTubes(
                    ClotNotRecorded,
                    inputs,
                    "clot",
                    "clot",
                    tube => tube.Clot == ClotCheck.NotRecorded,
                    "the protocol rejects clotted tubes, and a tube nobody looked at may be one"
                )
                : [],
            .. OfTubes(
                HemolysisNotRecorded,
                inputs,
                "hemolysis",
                "hemolysis",
                tube => tube.Hemolysis == Hemolysis.NotRecorded,
                "new hemolysis in a delayed tube counts as a failed tube"
            ),
            .. OfTubes(
                SpunNotRecorded,
                inputs,
                "time of spinning",
                "spun_at",
                tube => tube.SpunAt is null && mustBeSpun.Contains((tube.Specimen, tube.Tube)),
                "without the time of spinning the state in which a tube waited is not known, and its result is left out"
            ),
            .. OfTubes(
                OriginNotRecorded,
                inputs,
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

    /// <summary>Tubes whose time of spinning decides: delayed tubes always, baseline tubes where the group limits it.</summary>
    private static HashSet<(string Specimen, string Tube)> MustBeSpun(StudyInputs inputs)
    {
        var limited = inputs
            .Protocol.Groups.Where(item => item.BaselineSpunWithin is not null)
            .Select(item => item.Id)
            .ToHashSet();
        var limitedSpecimens = inputs
            .Tubes.Where(tube => limited.Contains(tube.Group))
            .Select(tube => tube.Specimen)
            .ToHashSet();
        return
        [
            .. inputs
                .Results.Where(row =>
                    row.TestedAt is not null
                    && (!row.Occasion.IsBaseline || limitedSpecimens.Contains(row.Specimen))
                )
                .Select(row => (row.Specimen, row.Tube)),
        ];
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
        StudyInputs inputs,
        string name,
        string column,
        Func<TubeRow, bool> isMissing,
        string why
    )
    {
        var missing = inputs.Tubes.Where(isMissing).ToImmutableArray();
        return FoundRows.OfTubes(
            kind,
            column,
            missing,
            () =>
                $"The {name} is not recorded for {Counted.Of(missing.Length, IsOfBaselines(missing, inputs) ? "baseline tube" : "tube")}{Of(missing)}: {why}.",
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
    private static bool IsOfBaselines(ImmutableArray<TubeRow> tubes, StudyInputs inputs)
    {
        var delayed = inputs
            .Results.Where(row => !row.Occasion.IsBaseline)
            .Select(row => (row.Specimen, row.Tube))
            .ToHashSet();
        return tubes.All(tube => !delayed.Contains((tube.Specimen, tube.Tube)));
    }

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
