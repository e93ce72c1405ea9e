using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

public sealed class AwkwardStudiesOfLotsTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "another lot for every delayed tube",
            Quiet.Rows(row => row.Occasion.IsBaseline ? row : row with { Lot = "R2" }),
            "Supported",
            "lot-differs-within-pair",
            "in 40 of 40 pairs"
        ),
        new(
            "another lot halfway through the study",
            Quiet.Rows(row =>
                string.CompareOrdinal(row.Specimen, "S020") < 0 ? row : row with { Lot = "R2" }
            ),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "lot-differs-within-pair",
        },
        new(
            "another lot between baseline and delayed once",
            Quiet.Row(3, 6, row => row with { Lot = "R2" }),
            "Supported",
            "lot-differs-within-pair",
            "in 1 of 40 pairs"
        ),
        new(
            "another instrument for every delayed tube",
            Quiet.Rows(row => row.Occasion.IsBaseline ? row : row with { Instrument = "AN2" }),
            "Supported",
            "instrument-differs-within-pair",
            "cannot be told from that of the delay"
        ),
        new(
            "another calibration for every delayed tube",
            Quiet.Rows(row => row.Occasion.IsBaseline ? row : row with { Calibration = "C2" }),
            "Supported",
            "calibration-differs-within-pair",
            "in 40 of 40 pairs"
        ),
        new(
            "a result at a time that was not planned",
            SmallStudy.Quiet(40, 6, 8).Analyte(a => a with { TimePoints = [SmallProtocol.At(6)] }),
            "Supported",
            "result-not-planned",
            "40 results of aPTT"
        ),
        new(
            "beyond the limit of the manufacturer",
            Quiet,
            "Supported",
            "modified-test",
            "beyond the manufacturer's limit of 4 h"
        ),
        new(
            "the manufacturer is silent",
            Quiet.Analyte(a => a with { ManufacturerLimit = null }),
            "Supported",
            "share-shown",
            "85 %"
        )
        {
            Silent = "modified-test",
        },
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_conclusion_and_its_words_are(string name) => Holds(s_studies, name);
}
