using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.DecisionLevel;
using StabilityStudy.Core.Criteria.Reclassification;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Planning;

/// <summary>Why a reduced study of a group takes so many specimens. The zero member takes as many as the original.</summary>
public enum ReducedBasis
{
    /// <summary>As many as the original: a criterion needs them.</summary>
    AsOriginal,

    /// <summary>The fewest of which one may lie outside and the share is still shown.</summary>
    ShareWithOneOutside,

    /// <summary>As many as a criterion wants near its levels.</summary>
    NearLevels,

    /// <summary>Enough on either side of every level.</summary>
    BesideLevels,

    /// <summary>The fewest for a mean.</summary>
    Mean,
}

/// <summary>How many specimens of a group a reduced study takes, never more than the original.</summary>
/// <param name="Group">Code of the group.</param>
/// <param name="Specimens">The number.</param>
/// <param name="Original">The original's.</param>
/// <param name="Basis">Why so many.</param>
/// <param name="Criterion">The criterion that needs them; null where none does.</param>
public sealed record ReducedNumber(
    string Group,
    int Specimens,
    int Original,
    ReducedBasis Basis,
    string? Criterion
)
{
    /// <summary>The share that is shown, percent; null where none is.</summary>
    public decimal? SharePercent { get; init; }

    // Common practice: no mean of fewer. The protocols plan 8 baselines on either side of a level, where 3 are needed.
    private const int FewestForMean = 20;
    private const int BesideLevel = 8;

    /// <summary>The number for a group of a protocol.</summary>
    public static ReducedNumber Of(StudyProtocol protocol, PatientGroup group)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(group);
        var largest = protocol
            .Criteria.Where(criterion => criterion.AppliesTo(group.Id))
            .SelectMany(criterion =>
                criterion.Limits.Select(choice =>
                    Of(
                        criterion,
                        protocol.Analytes.Single(analyte => analyte.Id == choice.Analyte),
                        group
                    )
                )
            )
            .Append(new(group.Id, FewestForMean, group.Specimens, ReducedBasis.Mean, null))
            .MaxBy(number => number.Specimens)!;
        return largest.Specimens < group.Specimens
            ? largest
            : largest with
            {
                Specimens = group.Specimens,
                Basis = ReducedBasis.AsOriginal,
            };
    }

    private static ReducedNumber Of(Criterion criterion, Analyte analyte, PatientGroup group)
    {
        var number = new ReducedNumber(
            group.Id,
            FewestForMean,
            group.Specimens,
            ReducedBasis.Mean,
            criterion.Id
        );
        return criterion switch
        {
            // Each class has a share of its own: fewer specimens would not fill the classes.
            ClassificationCriterion => number with
            {
                Specimens = group.Specimens,
                Basis = ReducedBasis.AsOriginal,
            },
            ReclassificationCriterion { Near: { } near } => number with
            {
                Specimens = near.SpecimensMinimum,
                Basis = ReducedBasis.NearLevels,
            },
            DecisionLevelCriterion levels => number with
            {
                Specimens =
                    BesideLevel
                    * (
                        1
                        + (levels.Levels.IsEmpty ? analyte.DecisionLevels : levels.Levels).Count(
                            level => analyte.IsPlannedFor(level, group.Id)
                        )
                    ),
                Basis = ReducedBasis.BesideLevels,
            },
            { SharePercentRequired: > 0 and < 100 and var share, IsEstimateAlone: false } =>
                number with
                {
                    Specimens = OneOutside((double)share / 100, criterion.ConfidenceLevel, group),
                    Basis = ReducedBasis.ShareWithOneOutside,
                    SharePercent = share,
                },
            _ => number,
        };
    }

    private static int OneOutside(double share, double confidenceLevel, PatientGroup group) =>
        Enumerable
            .Range(1, group.Specimens)
            .Where(specimens => AcceptanceNumber.Of(specimens, share, confidenceLevel) >= 1)
            .DefaultIfEmpty(group.Specimens)
            .First();
}
