namespace StabilityStudy.Core.Protocol;

/// <summary>A measured quantity.</summary>
/// <param name="Id">Key used in the files.</param>
/// <param name="Name">Name in the report.</param>
/// <param name="Method">Method principle in words (optical one-stage, chromogenic …); null when not stated.</param>
/// <param name="Loinc">LOINC code; null when not stated.</param>
/// <param name="Unit">UCUM unit.</param>
/// <param name="Decimals">Decimals of a reported result.</param>
/// <param name="StandardWindow">What today's rule allows.</param>
/// <param name="ManufacturerLimit">What the manufacturer's instructions allow; null when they are silent.</param>
/// <param name="BetweenRunCvPercent">Between-run coefficient of variation, percent; null when not stated.</param>
/// <param name="MeasuringInterval">Lowest and highest reportable result; null when not stated.</param>
/// <param name="DecisionLevels">Values at which care changes, in the unit, ascending.</param>
/// <param name="ErrorVarianceRatio">λ = variance of the baseline's error ÷ variance of the delayed result's error, for Deming regression.</param>
/// <param name="DriftShape">Shape of change with time, declared before data.</param>
public sealed record Analyte(
    string Id,
    string Name,
    string? Method,
    string? Loinc,
    string Unit,
    int Decimals,
    WindowRule StandardWindow,
    WindowRule? ManufacturerLimit,
    decimal? BetweenRunCvPercent,
    MeasuringInterval? MeasuringInterval,
    ImmutableArray<decimal> DecisionLevels,
    decimal ErrorVarianceRatio,
    Statistics.Drift.DriftShape DriftShape
)
{
    /// <summary>The time points at which this analyte is tested; empty means all of the protocol.</summary>
    public ImmutableArray<TimePoint> TimePoints { get; init; } = [];

    /// <summary>The patient groups in which it is studied; empty means all.</summary>
    public ImmutableArray<string> Groups { get; init; } = [];

    /// <summary>The storages in which it is studied; empty means all.</summary>
    public ImmutableArray<string> Storages { get; init; } = [];

    /// <summary>What a result on the wrong side of a decision level means for a patient, where the protocol states it.</summary>
    public ImmutableArray<LevelMeaning> LevelMeanings { get; init; } = [];

    /// <summary>The planned span of the baselines, where the protocol states it for a group.</summary>
    public ImmutableArray<PlannedRange> PlannedRanges { get; init; } = [];

    /// <summary>How many specimens of a group are to have a baseline in a range, for those who collect; it plans, and nothing is concluded from it.</summary>
    public ImmutableArray<PlannedNumber> PlannedNumbers { get; init; } = [];

    /// <summary>Groups for which today's rule allows another window than <see cref="StandardWindow"/>.</summary>
    public ImmutableArray<GroupWindow> GroupWindows { get; init; } = [];

    /// <summary>The results of a qualitative test, from the most negative to the most positive; empty for a number.</summary>
    public ImmutableArray<string> Categories { get; init; } = [];

    /// <summary>Windows that other rules give today; they inform, and nothing is concluded from them.</summary>
    public ImmutableArray<OtherWindow> OtherWindows { get; init; } = [];

    /// <summary>What others found while specimens waited; it plans, and nothing is concluded from it.</summary>
    public ImmutableArray<ExpectedChange> ExpectedChanges { get; init; } = [];

    /// <summary>Whether results are classes, of which there are no means, lines or drift.</summary>
    public bool IsQualitative => !Categories.IsEmpty;

    /// <summary>Key of the prothrombin time from which this international normalized ratio is computed; null for any other analyte.</summary>
    public string? RatioOf { get; init; }

    /// <summary>The unit for people: without the braces and brackets of UCUM, "{INR}", "mg/L{FEU}" and "[IU]/mL" are "INR", "mg/L FEU" and "IU/mL".</summary>
    public string ShownUnit =>
        Unit.Replace("{", " ", StringComparison.Ordinal)
            .Replace("}", "", StringComparison.Ordinal)
            .Replace("[", "", StringComparison.Ordinal)
            .Replace("]", "", StringComparison.Ordinal)
            .Trim();

    /// <summary>What the wrong side of a decision level means for a patient of a group; states neither side where the protocol does not.</summary>
    public LevelMeaning MeaningOf(decimal level, string group)
    {
        var ofLevel = LevelMeanings.Where(item => item.Level == level).ToImmutableArray();
        return ofLevel.FirstOrDefault(item => item.Group == group)
            ?? ofLevel.FirstOrDefault(item => item.Group is null)
            ?? new(level, group, null, null);
    }

    /// <summary>Whether a level lies in what the specimens of a group are planned to span, or no span is planned.</summary>
    public bool IsPlannedFor(decimal level, string group) =>
        PlannedRanges.FirstOrDefault(range => range.Group == group) is not { } range
        || (level >= range.Lowest && level <= range.Highest);

    /// <summary>What today's rule allows in a patient group and storage: the rule that names both, else that of the group, else that of all.</summary>
    public WindowRule StandardWindowOf(string group, string storage) =>
        GroupWindows
            .Where(item => item.Group == group && (item.Storage is null || item.Storage == storage))
            .OrderBy(item => item.Storage is null)
            .FirstOrDefault()
            ?.Rule
        ?? StandardWindow;
}

/// <summary>What today's rule allows in one patient group.</summary>
/// <param name="Group">Key of the patient group.</param>
/// <param name="Rule">Longest time from collection to test, and the source of the rule.</param>
public sealed record GroupWindow(string Group, WindowRule Rule)
{
    /// <summary>The storage to which the rule is confined; null for every one.</summary>
    public string? Storage { get; init; }

    /// <summary>The time points at which the analyte is tested in this group; empty means those of the analyte.</summary>
    public ImmutableArray<TimePoint> TimePoints { get; init; } = [];
}

/// <summary>The results that the specimens of a group are planned to span, in the unit of the analyte.</summary>
/// <param name="Group">Code of the group.</param>
/// <param name="Lowest">Lowest baseline to be collected.</param>
/// <param name="Highest">Highest baseline to be collected.</param>
public sealed record PlannedRange(string Group, decimal Lowest, decimal Highest);

/// <summary>Specimens of a group that are to have a baseline in a range, in the unit of the analyte.</summary>
/// <param name="Group">Code of the group.</param>
/// <param name="Lowest">Lowest baseline.</param>
/// <param name="Highest">Highest baseline.</param>
/// <param name="Specimens">How many.</param>
public sealed record PlannedNumber(string Group, decimal Lowest, decimal Highest, int Specimens);

/// <summary>A window that some rule allows.</summary>
/// <param name="Time">Longest time from collection to test.</param>
/// <param name="Source">The rule: a document, or "common practice".</param>
public sealed record WindowRule(TimeSpan Time, string Source)
{
    /// <summary>
    /// The second step of the rule: longest time from collection to test of plasma that was taken off the cells within <see cref="Time"/>; null where the
    /// rule has no second step.
    /// </summary>
    public TimeSpan? AsPlasma { get; init; }
}

/// <summary>Lowest and highest result that the method reports as a number, in the analyte's unit.</summary>
/// <param name="Lowest">Lowest result that is reported as a number.</param>
/// <param name="Highest">Highest result that is reported as a number.</param>
public sealed record MeasuringInterval(decimal Lowest, decimal Highest);
