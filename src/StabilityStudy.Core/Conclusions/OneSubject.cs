using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Core.Conclusions;

/// <summary>
/// Leaves out each subject in turn. A subject has one pair in a cell, so leaving it out at all times leaves out that
/// pair here. Means are taken without it; flags, exclusions, the number of collection days and the shares stay as they
/// are: for shares the question is how many more could be outside (<see cref="MoreOutside"/>).
/// </summary>
internal static class OneSubject
{
    /// <summary>The work grows with the square of the number of pairs, and above this number no single one weighs much.</summary>
    private const int MostPairs = 300;

    /// <summary>One line; none without a bias criterion, or with too few or too many pairs to ask.</summary>
    public static IEnumerable<RobustnessLine> Of(
        ImmutableArray<PairRecord> pairs,
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup group
    )
    {
        var data = CellData.Of(pairs, analyte.Decimals);
        var compared = data.Compared;
        var means = CellEvaluation.Means(data, pairs, protocol, analyte, group);
        if (means.IsEmpty || compared.Length is < 3 or > MostPairs)
        {
            yield break;
        }

        var shares = CellEvaluation.Shares(pairs, protocol, analyte, group);
        var own = CellEvaluation.Conclude([.. means, .. shares]);
        var frozen =
            data.DayCount < protocol.MinimumDays
                ? protocol
                : protocol with
                {
                    MinimumDays = data.DayCount - 1,
                };
        var different = Enumerable
            .Range(0, compared.Length)
            .Select(index =>
                CellEvaluation.Conclude([
                    .. CellEvaluation.Means(data.Without(index), pairs, frozen, analyte, group),
                    .. shares,
                ])
            )
            .Where(conclusion => conclusion != own)
            .ToImmutableArray();
        yield return new RobustnessLine(
            "one-subject-left-out",
            different.IsEmpty
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"with each of {compared.Length} subjects left out of the mean in turn"
                )
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"with one subject left out of the mean: {different.Length} of {compared.Length} would change the conclusion"
                ),
            different.IsEmpty ? own : MostCautious(different),
            !different.IsEmpty
        );
    }

    /// <summary>The conclusion furthest from supported.</summary>
    private static Conclusion MostCautious(ImmutableArray<Conclusion> conclusions) =>
        conclusions.Contains(Conclusion.NotSupported) ? Conclusion.NotSupported
        : conclusions.Contains(Conclusion.Inconclusive) ? Conclusion.Inconclusive
        : Conclusion.Supported;
}
