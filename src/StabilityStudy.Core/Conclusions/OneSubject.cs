using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.DecisionLevel;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// Leaves out each subject in turn, with every pair it has in a cell. Means are taken without it; flags, exclusions, the
/// number of collection days and the shares stay as they are: for shares the question is how many more could be outside
/// (<see cref="IndividualSensitivity"/>).
/// </summary>
internal static class OneSubject
{
    /// <summary>The work grows with the square of the number of pairs, and above this number no single one weighs much.</summary>
    private const int MostPairs = 300;

    /// <summary>A mean of fewer pairs has no skewness to look at.</summary>
    private const int FewestLeft = 3;

    /// <summary>One line; none without a bias criterion, or with too few or too many pairs to ask.</summary>
    public static IEnumerable<RobustnessLine> Of(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence cell
    )
    {
        var data = cell.Data;
        var subjects = data.Compared.Select(pair => pair.Subject).Distinct().ToImmutableArray();
        if (
            !criteria.Any(result => result is BiasResult or DecisionLevelResult)
            || data.Compared.Length is <= FewestLeft or > MostPairs
        )
        {
            yield break;
        }

        var own = CellEvaluation.Conclude(criteria);
        var different = subjects
            .Select(subject => cell.WithoutPairs(pair => pair.Subject == subject))
            .Where(left => left.Data.Compared.Length >= FewestLeft)
            .Select(left => CellEvaluation.Conclude(WithoutSubject(criteria, left)))
            .Where(conclusion => conclusion != own)
            .ToImmutableArray();
        yield return RobustnessLine.Of(
            new RobustnessQuestion(RobustnessKind.OneSubjectLeftOut, subjects.Length)
            {
                Changing = different.Length,
            },
            own,
            different.IsEmpty ? own : MostCautious(different)
        );
    }

    /// <summary>The criteria that judge a mean, judged again; those that count keep their results, as every pair still counts.</summary>
    private static ImmutableArray<CriterionResult> WithoutSubject(
        ImmutableArray<CriterionResult> criteria,
        CellEvidence left
    ) =>
        [
            .. left.Context.Applying.Zip(
                criteria,
                (item, result) =>
                    item.Criterion.JudgesMean ? item.Criterion.Evaluate(item.Limit, left) : result
            ),
        ];

    /// <summary>The conclusion furthest from supported.</summary>
    private static Conclusion MostCautious(ImmutableArray<Conclusion> conclusions) =>
        conclusions.Contains(Conclusion.NotSupported) ? Conclusion.NotSupported
        : conclusions.All(conclusion => conclusion == Conclusion.Supported) ? Conclusion.Supported
        : Conclusion.Inconclusive;
}
