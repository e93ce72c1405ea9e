using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// Turns specimens that count as inside into specimens that count as outside, for the individual criteria alone; the
/// means stay as they are.
/// </summary>
internal static class MoreOutside
{
    /// <summary>One more outside, and, for a supported cell that bears it, the fewest that would change the conclusion.</summary>
    public static IEnumerable<RobustnessLine> Of(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var means = CellEvaluation.Means(pairs, protocol, analyte, group);
        var shares = CellEvaluation
            .Shares(pairs, protocol, analyte, group)
            .OfType<IndividualResult>()
            .ToImmutableArray();
        var outside = shares.SelectMany(result => result.Agreement.OutsideSpecimens).ToHashSet();
        var inside = pairs
            .Where(pair => pair.CountsForAgreement && !outside.Contains(pair.Specimen))
            .ToImmutableArray();
        if (shares.IsEmpty || inside.IsEmpty)
        {
            yield break;
        }

        var own = CellEvaluation.Conclude([.. means, .. shares]);
        RobustnessLine Line(string code, string question, int more)
        {
            var turned = inside.Take(more).Select(pair => pair.Specimen).ToHashSet();
            var conclusion = CellEvaluation.Conclude([
                .. means,
                .. CellEvaluation.Shares(
                    [
                        .. pairs.Select(pair =>
                            turned.Contains(pair.Specimen)
                                ? pair with
                                {
                                    Status = PairStatus.Failed,
                                }
                                : pair
                        ),
                    ],
                    protocol,
                    analyte,
                    group
                ),
            ]);
            return new RobustnessLine(code, question, conclusion, conclusion != own);
        }

        yield return Line("one-more-outside", "if one more specimen had been outside the limit", 1);
        var fewest = 1 + shares.Min(CouldStillBeOutside);
        if (own == Conclusion.Supported && fewest > 1)
        {
            yield return Line(
                "fewest-more-outside",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"if {fewest} more specimens had been outside the limit"
                ),
                fewest
            );
        }
    }

    private static int CouldStillBeOutside(IndividualResult result) =>
        (result.MostOutside ?? 0) - (result.Agreement.Counted - result.Agreement.Inside);
}
