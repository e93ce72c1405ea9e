using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>A study with every fact of how its specimens were chosen, drawn, spun and kept, and of who paid.</summary>
internal static class HandledStudy
{
    public static StudyAnalysis Of(StudyAnalysis analysis) =>
        analysis with
        {
            Protocol = Planned(analysis.Protocol),
            Facts = analysis.Facts with
            {
                CollectionTube = new("2.7 mL, plastic", 3.2m),
                Spinning = new("C-2", 1500, TimeSpan.FromMinutes(15), 1) { Platelets = 6 },
                Temperatures =
                [
                    .. analysis.Protocol.Storages.Select(storage => new StorageTemperature(
                        storage.Id,
                        new(19.2m, 23.8m),
                        "logger L-7"
                    )),
                ],
                SpecimenSource = new("patients of the hospital", "in order", "decision 14"),
                Funding = "the laboratory",
                Interests = "none",
            },
            Sequences =
            [
                .. analysis.Sequences.Select(sequence =>
                    sequence with
                    {
                        Cells =
                        [
                            .. sequence.Cells.Select(cell =>
                                cell with
                                {
                                    Pairs = [.. cell.Pairs.Select(WithRuns)],
                                }
                            ),
                        ],
                    }
                ),
            ],
        };

    public static StudyProtocol Planned(StudyProtocol protocol) =>
        protocol with
        {
            Groups =
            [
                .. protocol.Groups.Select(group => group with { WhySoMany = "2 may be outside" }),
            ],
            Draw = new(
                "2.7 mL, plastic",
                3.2m,
                DiscardTubeRule.BeforeWingedSet,
                DrawOrder.FirstOrAfterBloodCulture,
                3,
                5,
                "common practice"
            )
            {
                Devices = ["straight needle", "winged set"],
                Transport = new(15, 25),
            },
            Spin = new(1500, TimeSpan.FromMinutes(15), 2, "processing guidance of 2021")
            {
                Celsius = new(18, 25),
                PlateletsBelow = 10,
            },
        };

    private static Core.Pairing.PairRecord WithRuns(Core.Pairing.PairRecord pair) =>
        pair with
        {
            Baseline = pair.Baseline is { } baseline
                ? baseline with
                {
                    Conditions = baseline.Conditions with { Run = "R1" },
                }
                : null,
            Delayed = pair.Delayed is { } delayed
                ? delayed with
                {
                    Conditions = delayed.Conditions with { Run = "R2" },
                }
                : null,
        };
}
