using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Doubts;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
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

    /// <summary>The mean bridging result of each run; empty where there is no bridging plasma.</summary>
    private ImmutableArray<(string Run, double Mean)> BridgingMeans { get; init; } = [];

    /// <summary>The same with bridging plasma in its runs.</summary>
    public SimulatedStudy Bridged(ImmutableArray<(string Run, double Mean)> means) =>
        this with
        {
            BridgingMeans = means,
        };

    /// <summary>The same counting changes from collection.</summary>
    public SimulatedStudy SinceCollection() =>
        new(
            Protocol with
            {
                ChangeSince = ChangeOrigin.Collection,
                Analytes = [Protocol.Analytes[0] with { BetweenRunCvPercent = 2m }],
            }
        );

    public SimulatedStudy Analyte(Func<Analyte, Analyte> change) =>
        new(Protocol with { Analytes = [change(Protocol.Analytes[0])] });

    /// <summary>What each criterion says of a time point; the pairs of earlier ones come first.</summary>
    public ImmutableArray<CriterionResult> Criteria(
        params ImmutableArray<ImmutableArray<PairRecord>> upToHere
    ) => CellEvaluation.Evaluate(Evidence(upToHere));

    private CellEvidence Evidence(ImmutableArray<ImmutableArray<PairRecord>> upToHere) =>
        CellEvidence.From(
            upToHere[^1],
            new CellContext(
                Protocol,
                Protocol.Analytes[0],
                Protocol.Groups[0],
                Protocol.Storages[0],
                Protocol.TimePoints[upToHere.Length - 1],
                upToHere.RemoveAt(upToHere.Length - 1)
            )
            {
                Bridging = RunBridging.Of([
                    .. BridgingMeans.Select(item => new ControlRow(
                        2,
                        "BRIDGE",
                        Protocol.Analytes[0].Id,
                        item.Run,
                        default,
                        new MeasuredResult("", Math.Round((decimal)item.Mean, 5)),
                        "s",
                        null,
                        null,
                        null,
                        ControlKind.BridgingPlasma
                    )),
                ]),
            }
        );

    /// <summary>What a time point concludes on its own.</summary>
    public Conclusion Conclude(params ImmutableArray<ImmutableArray<PairRecord>> upToHere) =>
        Doubt
            .Of(Evidence(upToHere), controls: null)
            .Conclude(CellEvaluation.Conclude(Criteria(upToHere)));

    public bool Supports(params ImmutableArray<ImmutableArray<PairRecord>> upToHere) =>
        Conclude(upToHere) == Conclusion.Supported;
}
