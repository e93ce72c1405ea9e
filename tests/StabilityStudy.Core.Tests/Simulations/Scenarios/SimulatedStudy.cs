using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>A protocol, and what the program concludes by it from pairs. Nothing here decides.</summary>
internal sealed record SimulatedStudy(StudyProtocol Protocol)
{
    /// <summary>One analyte, delays of 6, 8 and 12 h, and the criteria in question.</summary>
    public static SimulatedStudy Of(
        ImmutableArray<Limit> limits,
        params ImmutableArray<Criterion> criteria
    ) => new(SmallProtocol.For(40, 6, 8, 12) with { Limits = limits, Criteria = criteria });

    /// <summary>The mean change in percent held to 7.5 %.</summary>
    public static SimulatedStudy OfMean { get; } =
        Of([SmallProtocol.Bias], SmallProtocol.MeanCriterion);

    public SimulatedStudy Analyte(Func<Analyte, Analyte> change) =>
        new(Protocol with { Analytes = [change(Protocol.Analytes[0])] });

    /// <summary>What each criterion says of a time point; the pairs of earlier ones come first.</summary>
    public ImmutableArray<CriterionResult> Criteria(
        params ImmutableArray<ImmutableArray<PairRecord>> upToHere
    ) =>
        CellEvaluation.Evaluate(
            upToHere[^1],
            new CellContext(
                Protocol,
                Protocol.Analytes[0],
                Protocol.Groups[0],
                Protocol.Storages[0],
                Protocol.TimePoints[upToHere.Length - 1],
                upToHere.RemoveAt(upToHere.Length - 1)
            )
        );

    /// <summary>What a time point concludes on its own.</summary>
    public Conclusion Conclude(params ImmutableArray<ImmutableArray<PairRecord>> upToHere) =>
        Doubt
            .Of(upToHere[^1], Protocol, evidence: null)
            .Conclude(CellEvaluation.Conclude(Criteria(upToHere)));

    public bool Supports(params ImmutableArray<ImmutableArray<PairRecord>> upToHere) =>
        Conclude(upToHere) == Conclusion.Supported;
}
