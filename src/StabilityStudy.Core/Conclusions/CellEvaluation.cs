using System.Collections.Immutable;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Conclusions;

/// <summary>Applies the protocol's criteria to the pairs of a cell, without regard to other time points.</summary>
internal static class CellEvaluation
{
    /// <summary>What each criterion that applies to the analyte and group says.</summary>
    public static ImmutableArray<CriterionResult> Evaluate(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var data = CellData.Of(pairs, analyte.Decimals);
        var results = ImmutableArray.CreateBuilder<CriterionResult>();
        foreach (var criterion in protocol.Criteria)
        {
            if (LimitFor(criterion, protocol, analyte, group) is not { } limit)
            {
                continue;
            }

            results.Add(
                criterion switch
                {
                    BiasCriterion bias => BiasEvaluation.Evaluate(
                        bias,
                        limit,
                        data,
                        protocol.MinimumDays
                    ),
                    IndividualCriterion individual => IndividualEvaluation.Evaluate(
                        individual,
                        limit,
                        pairs
                    ),
                    _ => throw new InvalidOperationException(
                        $"No evaluation for {criterion.GetType().Name}."
                    ),
                }
            );
        }

        return results.ToImmutable();
    }

    /// <summary>No criterion: not assessed. All met: supported. Any not met: not supported. Else inconclusive.</summary>
    public static Conclusion Conclude(ImmutableArray<CriterionResult> results) =>
        results.IsEmpty ? Conclusion.NotAssessed
        : results.Any(result => result.Verdict == Verdict.NotMet) ? Conclusion.NotSupported
        : results.All(result => result.Verdict == Verdict.Met) ? Conclusion.Supported
        : Conclusion.Inconclusive;

    private static Limit? LimitFor(
        Criterion criterion,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var applies = criterion.Groups.IsEmpty || criterion.Groups.Contains(group.Id);
        var choice = criterion.Limits.FirstOrDefault(item => item.Analyte == analyte.Id);
        return applies && choice is not null
            ? protocol.Limits.Single(limit => limit.Id == choice.Limit)
            : null;
    }
}
