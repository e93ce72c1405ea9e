using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Individual;

/// <summary>The share of single specimens within the allowable difference.</summary>
/// <inheritdoc cref="CriterionResult"/>
/// <param name="Limit">The limit it was held to.</param>
/// <param name="ConfidenceLevel">Level of each one-sided bound.</param>
/// <param name="Agreement">The counts behind the share.</param>
/// <param name="RequiredShare">Required share, 0 to 1.</param>
/// <param name="Bounds">Share with exact bounds; refused when there is no pair to count.</param>
/// <param name="MostOutside">Most specimens outside with which this number of specimens can still meet the criterion; null when none can.</param>
public sealed record IndividualResult(
    string Criterion,
    Limit Limit,
    Verdict Verdict,
    ImmutableArray<VerdictReason> Reasons,
    double ConfidenceLevel,
    AgreementCount Agreement,
    double RequiredShare,
    Estimate<ProportionBounds> Bounds,
    int? MostOutside
) : CriterionResult(Criterion, Verdict, Reasons)
{
    /// <summary>The reading that decided, of which the counts are.</summary>
    public ChangeReading Reading { get; init; }

    /// <summary>Every reading that the study calls for; as measured is the first.</summary>
    public ImmutableArray<ReadAgreement> Readings { get; init; } = [];

    /// <summary>Those inside in the reading with the fewest.</summary>
    internal int FewestInside => Readings.Min(item => item.Agreement.Inside);

    /// <inheritdoc/>
    public override CriterionKind Kind => CriterionKind.Individual;

    internal override LimitUse? LimitUse => new(Limit, OfMean: false);

    internal override ImmutableArray<SizedFigure> Sized(int compared, int days) =>
        IndividualSizing.Of(this);
}

/// <summary>The counts of one reading.</summary>
/// <param name="Reading">From where to where changes are taken.</param>
/// <param name="Agreement">The counts.</param>
/// <param name="Verdict">What they say.</param>
public sealed record ReadAgreement(
    ChangeReading Reading,
    AgreementCount Agreement,
    Verdict Verdict
);
