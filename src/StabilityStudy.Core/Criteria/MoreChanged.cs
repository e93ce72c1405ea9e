using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria.Classification;
using StabilityStudy.Core.Criteria.Reclassification;

namespace StabilityStudy.Core.Criteria;

/// <summary>
/// The fewest further specimens that change side of a level, or class, with which a supported time point would no longer
/// be supported. It works on counts, level by level, with every change moved by what the runs could have added.
/// </summary>
internal static class MoreChanged
{
    public static IEnumerable<RobustnessLine> Of(ImmutableArray<CriterionResult> criteria)
    {
        var own = CellEvaluation.Conclude(criteria);
        if (own != Conclusion.Supported)
        {
            yield break;
        }

        foreach (var result in criteria)
        {
            var (fewest, what) = result switch
            {
                ReclassificationResult sides => sides
                    .Levels.Select(level =>
                        (
                            Fewest(
                                level.Counted,
                                level.ChangedIfMoved,
                                (decimal)(100 * (1 - sides.LargestShare)),
                                sides.ConfidenceLevel
                            ),
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"changed the side of {level.Level}"
                            )
                        )
                    )
                    .DefaultIfEmpty((0, ""))
                    .MinBy(level => level.Item1),
                ClassificationResult classes => (
                    Fewest(
                        classes.Counted,
                        classes.ChangedIfMoved,
                        (decimal)(100 * classes.RequiredShare),
                        classes.ConfidenceLevel
                    ),
                    "changed class"
                ),
                _ => (0, ""),
            };
            if (fewest > 0)
            {
                yield return RobustnessLine.Of(
                    "fewest-more-changed",
                    new FurtherSpecimens(fewest, what),
                    own,
                    CellEvaluation.Conclude([
                        .. criteria.Select(item =>
                            item == result ? item with { Verdict = Verdict.Inconclusive } : item
                        ),
                    ])
                );
            }
        }
    }

    private static int Fewest(
        int counted,
        int changed,
        decimal percentKept,
        double confidenceLevel
    ) =>
        FewestMore.ThatOpen(
            counted - changed,
            more =>
                ShareKept.Judge(
                    counted,
                    changed + more,
                    changed + more,
                    percentKept,
                    confidenceLevel
                ) == Verdict.Met
        );
}
