using StabilityStudy.Statistics;
using StabilityStudy.Statistics.Proportions;

namespace StabilityStudy.Core.Criteria.Classification;

/// <summary>
/// Decides a classification criterion: met when the exact one-sided lower bound of the share that keeps its class
/// reaches the required share, failed and undecidable ones counted as changed; not met when the upper bound stays below
/// it with the undecidable ones counted as kept. A test can keep all clear negatives and lose every weak positive, so
/// too few weak positives leave it open. A person counts once, as the worst of the draws.
/// </summary>
internal static class ClassificationEvaluation
{
    private enum Fate
    {
        Changed,
        Failed,
        Undecidable,
        Kept,
    }

    private sealed record Classified(PairRecord Pair, int? Before, int? After, Fate Fate);

    public static ClassificationResult Evaluate(
        ClassificationCriterion criterion,
        CellEvidence cell
    )
    {
        var context = cell.Context;
        var counted = cell.Pairs.Where(pair => pair.CountsForAgreement).ToImmutableArray();
        ImmutableArray<decimal> cutoffs = [.. criterion.Cutoffs.Order()];
        var persons = Persons(counted, cutoffs);
        int Number(Fate fate) => persons.Count(item => item.Fate == fate);
        var kept = Number(Fate.Kept);
        var weak = persons.Count(item => item.Before == 1);
        var verdict = Judge(persons, criterion);
        var shift = RunShift.Of(counted, criterion.ConfidenceLevel, cell.Data);
        var moved = shift
            .Moved(counted)
            .Select(shifted => Persons(shifted, cutoffs))
            .ToImmutableArray();
        ImmutableArray<VerdictReason> doubts =
            verdict == Verdict.Met
                ?
                [
                    .. new VerdictReason?[]
                    {
                        FewWeak(weak, criterion),
                        cell.FewClustersOfShare,
                        moved.Any(item => Judge(item, criterion) != Verdict.Met)
                            ? new OpenIfRunsMovedReason(shift.Percent, new ClassesOpenIfMoved())
                            : null,
                    }.OfType<VerdictReason>(),
                ]
            : verdict == Verdict.NotMet
            && shift
                .MovedForRefusal(counted)
                .Any(shifted => Judge(Persons(shifted, cutoffs), criterion) != Verdict.NotMet)
                ? [new OpenIfRunsMovedReason(shift.PercentForRefusal, new ClassesOpenIfMoved())]
            : [];
        return new ClassificationResult(
            criterion.Id,
            doubts.IsEmpty ? verdict : Verdict.Inconclusive,
            doubts.Add(ReasonOf(verdict, criterion.SharePercentMinimum)),
            criterion.ConfidenceLevel,
            (double)(criterion.SharePercentMinimum / 100),
            Classes(cutoffs, context.Analyte),
            Table(persons),
            persons.Length,
            kept,
            Number(Fate.Failed),
            Number(Fate.Undecidable),
            weak,
            criterion.WeakPositivesMinimum,
            ExpectedChanges.Number(counted, cutoffs, context),
            [.. persons.Where(item => item.Fate != Fate.Kept).Select(item => item.Pair.Specimen)],
            ShareKept.Bounds(kept, persons.Length, criterion.ConfidenceLevel)
        )
        {
            ChangedIfMoved = moved.Max(Changed),
        };
    }

    private static ImmutableArray<Classified> Persons(
        ImmutableArray<PairRecord> counted,
        ImmutableArray<decimal> cutoffs
    ) =>
        [
            .. counted
                .GroupBy(pair => pair.Subject)
                .Select(draws =>
                    draws.Select(pair => Classify(pair, cutoffs)).MinBy(item => item.Fate)!
                ),
        ];

    private static Verdict Judge(
        ImmutableArray<Classified> persons,
        ClassificationCriterion criterion
    ) =>
        persons.IsEmpty
            ? Verdict.Inconclusive
            : ShareKept.Judge(
                persons.Length,
                Changed(persons),
                persons.Count(item => item.Fate is Fate.Changed or Fate.Failed),
                criterion.SharePercentMinimum,
                criterion.ConfidenceLevel
            );

    private static int Changed(ImmutableArray<Classified> persons) =>
        persons.Count(item => item.Fate != Fate.Kept);

    private static Classified Classify(PairRecord pair, ImmutableArray<decimal> cutoffs)
    {
        var before = ClassOf(pair.Baseline?.Result, cutoffs);
        var after = ClassOf(pair.Delayed?.Result, cutoffs);
        var fate =
            pair.IsLost ? Fate.Undecidable
            : pair.Status == PairStatus.Failed || pair.Delayed?.Result is MissingResult
                ? Fate.Failed
            : before is null || after is null ? Fate.Undecidable
            : before == after ? Fate.Kept
            : Fate.Changed;
        return new(pair, before, after, fate);
    }

    private static int? ClassOf(ReportedResult? result, ImmutableArray<decimal> cutoffs) =>
        result is CategoryResult category ? category.Category
        : cutoffs.IsEmpty ? null
        : ResultRange.Of(result)?.Reaches(cutoffs);

    private static TooFewWeakPositivesReason? FewWeak(
        int weak,
        ClassificationCriterion criterion
    ) =>
        weak >= criterion.WeakPositivesMinimum
            ? null
            : new TooFewWeakPositivesReason(weak, criterion.WeakPositivesMinimum);

    private static VerdictReason ReasonOf(Verdict verdict, decimal percentMinimum) =>
        verdict switch
        {
            Verdict.Met => new ClassesKeptReason(percentMinimum),
            Verdict.NotMet => new ClassesLostReason(percentMinimum),
            Verdict.Inconclusive => new ClassesOpenReason(percentMinimum),
        };

    private static ImmutableArray<ClassChange> Table(ImmutableArray<Classified> persons) =>
        [
            .. persons
                .Where(item => item.Fate is Fate.Kept or Fate.Changed)
                .GroupBy(item => (Before: item.Before!.Value, After: item.After!.Value))
                .OrderBy(group => group.Key)
                .Select(group => new ClassChange(group.Key.Before, group.Key.After, group.Count())),
        ];

    private static ImmutableArray<string> Classes(ImmutableArray<decimal> cutoffs, Analyte analyte)
    {
        if (cutoffs.IsEmpty)
        {
            return analyte.Categories;
        }

        string Text(int i) => cutoffs[i].ToString(CultureInfo.InvariantCulture);
        return
        [
            $"below {Text(0)}",
            .. Enumerable
                .Range(1, cutoffs.Length - 1)
                .Select(i => $"{Text(i - 1)} to below {Text(i)}"),
            $"{Text(cutoffs.Length - 1)} or above",
        ];
    }
}
