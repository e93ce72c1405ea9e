using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.DecisionLevel;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// Leaves out each subject in turn, with every pair it has in a cell. Means are taken without it; flags, exclusions, the
/// number of collection days and the shares stay as they are: for shares the question is how many more could be outside
/// (<see cref="Criteria.Individual.IndividualSensitivity"/>).
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
        if (
            !criteria.Any(result => result is BiasResult or DecisionLevelResult)
            || data.Compared.Length is <= FewestLeft or > MostPairs
        )
        {
            yield break;
        }

        var subjects = data.Compared.Select(pair => pair.Subject).Distinct().ToImmutableArray();
        var own = CellEvaluation.Conclude(criteria);
        var different = subjects
            .Select(subject =>
                (Subject: subject, Left: cell.WithoutPairs(pair => pair.Subject == subject))
            )
            .Where(item => item.Left.Data.Compared.Length >= FewestLeft)
            .Select(item => (item.Subject, Criteria: WithoutSubject(criteria, item.Left)))
            .Select(item =>
                (item.Subject, item.Criteria, Conclusion: CellEvaluation.Conclude(item.Criteria))
            )
            .Where(item => item.Conclusion != own)
            .ToImmutableArray();
        var most = different.IsEmpty
            ? own
            : MostCautious([.. different.Select(item => item.Conclusion)]);
        yield return RobustnessLine.Of(
            new RobustnessQuestion(RobustnessKind.OneSubjectLeftOut, subjects.Length)
            {
                Changing = different.Length,
                Otherwise = different
                    .Where(item => item.Conclusion == most)
                    .Select(item => Otherwise(item.Subject, criteria, item.Criteria))
                    .FirstOrDefault(),
            },
            own,
            most
        );
    }

    /// <summary>The criterion whose verdict is another without a subject, and why.</summary>
    private static CriterionOtherwise Otherwise(
        string subject,
        ImmutableArray<CriterionResult> criteria,
        ImmutableArray<CriterionResult> otherwise
    ) =>
        criteria
            .Zip(otherwise)
            .Where(item => item.First.Verdict != item.Second.Verdict)
            .Select(item => new CriterionOtherwise(
                subject,
                item.Second.Criterion,
                item.Second.Reasons[0]
            ))
            .First();

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
