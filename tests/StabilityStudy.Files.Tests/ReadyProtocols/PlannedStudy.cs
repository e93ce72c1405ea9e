using StabilityStudy.Core.Planning;
using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Files.Tests.ReadyProtocols;

/// <summary>A study as a ready protocol plans it, for one analyte and group, with the change that others found.</summary>
internal sealed record PlannedStudy(
    StudyProtocol Protocol,
    Analyte Analyte,
    PatientGroup Group,
    ExpectedChange Expected
)
{
    /// <summary>Share of the planned range that holds nine specimens of ten of a normal distribution.</summary>
    private const double NineOfTen = 2 * 1.645;

    /// <summary>Every planned study of a protocol.</summary>
    public static ImmutableArray<PlannedStudy> All(StudyProtocol protocol) =>
        [
            .. from analyte in protocol.Analytes
            from expected in analyte.ExpectedChanges
            select new PlannedStudy(
                protocol,
                analyte,
                protocol.Groups.Single(patients => patients.Id == expected.Group),
                expected
            ),
        ];

    /// <summary>
    /// How often all criteria together support the time point: days and runs as planned, baselines as planned in each part of their range, and the stated CV half of runs and half of repeats (in variance).
    /// </summary>
    public double Chance(int studies, ulong seed) =>
        CriterionSetCharacteristic
            .Curve(
                Protocol,
                Analyte.Id,
                Group.Id,
                Expected.TimePoint,
                Supposed(),
                [(double)Expected.Percent],
                studies,
                seed
            )[0]
            .Probability;

    private SupposedResults Supposed()
    {
        var range = Analyte.PlannedRanges.Single(item => item.Group == Group.Id);
        var (lowest, highest) = ((double)range.Lowest, (double)range.Highest);
        var half = (double)Analyte.BetweenRunCvPercent!.Value / Math.Sqrt(2);
        return new SupposedResults(
            SupposedConduct.Even(Group.Specimens, Protocol.PlannedDays!.Value),
            SameRun: false,
            Math.Sqrt(lowest * highest),
            Math.Log(highest / lowest) / NineOfTen,
            (double)Expected.SpecimenSdPercent,
            half / Math.Sqrt(Protocol.Replicates),
            half
        )
        {
            Parts =
            [
                .. Analyte
                    .PlannedNumbers.Where(part => part.Group == Group.Id)
                    .Select(part => new SupposedBaselines(
                        (double)part.Lowest,
                        (double)part.Highest,
                        part.Specimens
                    )),
            ],
        };
    }
}
