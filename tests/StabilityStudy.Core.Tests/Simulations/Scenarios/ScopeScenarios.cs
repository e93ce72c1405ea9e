using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Tests.Studies;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Two instruments, of which the second changes results by the allowable bias and the first does not: a window for both is false.</summary>
internal static class ScopeScenarios
{
    private const string Section = "Two instruments, one window";
    private const double RunSd = 1.41;
    private const double SpecimenSd = 3.6;

    public static IEnumerable<Scenario> All =>
        [
            Of(0, MeanScenarios.Limit, 40, byRule: false),
            Of(0, MeanScenarios.Limit, 40, byRule: true),
            Of(MeanScenarios.Limit, MeanScenarios.Limit, 40, byRule: true),
            Of(0, 0, 40, byRule: true),
            Of(2, 4, 40, byRule: true),
        ];

    /// <summary>Specimens of two instruments, each with runs of its own on ten days.</summary>
    /// <param name="first">True mean change on the first, percent.</param>
    /// <param name="second">On the second.</param>
    /// <param name="each">Specimens on each.</param>
    /// <param name="byRule">Whether each must support it by itself, or only all together.</param>
    public static Scenario Of(double first, double second, int each, bool byRule)
    {
        var study = SimulatedStudy.OfMean;
        SimulatedCell Cell(double mean) =>
            new(Collection.On(10, each), mean, SpecimenSd, ChangeShape.Normal)
            {
                RunSdPercent = RunSd,
            };
        var (one, two) = (Cell(first), Cell(second));
        return new(
            Section,
            FormattableString.Invariant(
                $"mean change {first} % on one and {second} % on the other; {(byRule ? "each must support it" : "all together alone, which is not the rule")}"
            ),
            2 * each,
            !byRule ? Reading.NotControlled
                : Math.Max(first, second) < MeanScenarios.Limit ? Reading.Power
                : Reading.Controlled,
            random =>
                Supports(
                    study.Protocol,
                    [.. On("AN1", one.Draw(random)), .. On("AN2", two.Draw(random))],
                    byRule
                )
        );
    }

    private static bool Supports(
        Protocol.StudyProtocol protocol,
        ImmutableArray<PairRecord> pairs,
        bool byRule
    )
    {
        var context = new PairContext(
            protocol,
            SmallProtocol.Facts,
            protocol.Analytes[0],
            protocol.Groups[0],
            protocol.Storages[0]
        )
        {
            Numbers = new(protocol, []),
        };
        ImmutableArray<AssembledCell> cells = [new(protocol.TimePoints[0], pairs, null)];
        var parts = ScopeParts.Of(cells, context, []);
        var cell = cells[0]
            .Doubted(byRule ? ScopeParts.DoubtsAt(protocol.TimePoints[0], parts) : []);
        return JudgedCell.All([cell], context, [])[0].Own == Conclusion.Supported;
    }

    private static IEnumerable<PairRecord> On(
        string instrument,
        ImmutableArray<PairRecord> pairs
    ) =>
        pairs.Select(pair =>
            pair with
            {
                Collected = pair.Collected with
                {
                    Code = instrument + pair.Specimen,
                    Subject = instrument + pair.Subject,
                },
                Baseline = On(instrument, pair.Baseline!),
                Delayed = On(instrument, pair.Delayed!),
                HasValidBaseline = true,
            }
        );

    private static Measurement On(string instrument, Measurement result) =>
        result with
        {
            Conditions = result.Conditions with
            {
                Instrument = instrument,
                Run = instrument + result.Run,
            },
        };
}
