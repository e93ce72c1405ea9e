using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>A study as a second report tells it: with a revision, files read by mapped words, and portions that were frozen.</summary>
internal static class RevisedStudy
{
    public static readonly ReportRevision Revision = new(
        2,
        "3f09c2d41b7a5e683f09c2d41b7a5e683f09c2d41b7a5e683f09c2d41b7a5e68",
        "the lot of the reagent was corrected"
    );

    public static readonly ImmutableArray<OwnFile> OwnFiles =
    [
        new(
            "tubes.csv",
            null,
            false,
            [],
            [new("clot", "", "no"), new("clot", "ja", "yes")],
            [new("subject", 12), new("specimen", 1)],
            []
        ),
        new(
            "export.csv",
            "dd.MM.yyyy HH:mm",
            true,
            [new("result", "Ergebnis")],
            [new("unit", "sec", "s")],
            [],
            [new("analyte", "aPTT")]
        ),
    ];

    public static StudyAnalysis Of(StudyAnalysis analysis) =>
        Frozen(
            analysis with
            {
                Facts = analysis.Facts with { Revision = Revision, OwnFiles = OwnFiles },
            }
        );

    /// <summary>The same with portions frozen 40 minutes after collection and later, and tested 5 minutes after thawing and later, but for the first.</summary>
    public static StudyAnalysis Frozen(StudyAnalysis analysis) =>
        analysis with
        {
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
                                    Pairs =
                                    [
                                        .. cell.Pairs.Select(
                                            (pair, i) =>
                                                i == 0 ? pair : Frozen(pair, 40 + i, 5 + (i % 7))
                                        ),
                                    ],
                                }
                            ),
                        ],
                    }
                ),
            ],
        };

    /// <summary>A pair whose delayed portion was frozen so many minutes after collection, and thawed so many before its test.</summary>
    public static PairRecord Frozen(PairRecord pair, int beforeFreezing, int afterThawing) =>
        pair.Delayed is { Container: { } tube, TestedAt: { } testedAt } delayed
            ? pair with
            {
                Delayed = delayed with
                {
                    Container = tube with
                    {
                        FrozenAt = tube.CollectedAt.AddMinutes(beforeFreezing),
                        ThawedAt = testedAt.AddMinutes(-afterThawing),
                    },
                },
            }
            : pair;
}
