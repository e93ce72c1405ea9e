namespace StabilityStudy.Core.Planning;

/// <summary>What the collection of a patient group takes.</summary>
/// <param name="Group">Key of the group.</param>
/// <param name="Specimens">Specimens, of all instruments together.</param>
/// <param name="TubesOfSpecimen">Tubes of one draw, the spare not among them.</param>
/// <param name="SparesOfSpecimen">Spare tubes, or spare portions, of one draw.</param>
/// <param name="PortionsOfSpecimen">Portions of plasma, the spare not among them; null where whole tubes wait.</param>
/// <param name="MillilitersOfSpecimen">Blood of one draw, spare included, mL.</param>
public sealed record GroupMaterial(
    string Group,
    int Specimens,
    int TubesOfSpecimen,
    int SparesOfSpecimen,
    int? PortionsOfSpecimen,
    decimal MillilitersOfSpecimen
)
{
    /// <summary>Tubes of the group, spares not among them.</summary>
    public int Tubes => Specimens * TubesOfSpecimen;

    /// <summary>Spares of the group.</summary>
    public int Spares => Specimens * SparesOfSpecimen;
}

/// <summary>Counts what a protocol takes: a baseline, whatever waits in every storage, and one spare.</summary>
internal static class PlannedMaterial
{
    /// <summary>Portions of 0.5 mL that the plasma of one tube surely gives: half of 2.7 mL is plasma, and the layer above the cells stays (common practice).</summary>
    public const int PortionsOfTube = 2;

    public static ImmutableArray<GroupMaterial> Of(StudyProtocol protocol, PlanRequest request) =>
        [
            .. from patients in protocol.Groups
            where request.Group is null || request.Group == patients.Id
            select Of(protocol, patients, request),
        ];

    private static GroupMaterial Of(
        StudyProtocol protocol,
        PatientGroup patients,
        PlanRequest request
    )
    {
        var waiting = protocol
            .Analytes.Where(analyte =>
                (analyte.Groups.IsEmpty || analyte.Groups.Contains(patients.Id))
                && (request.Analyte is null || request.Analyte == analyte.Id)
            )
            .SelectMany(analyte =>
                from storage in protocol.Storages
                where analyte.Storages.IsEmpty || analyte.Storages.Contains(storage.Id)
                from point in protocol.TimePointsOf(analyte, patients.Id)
                select (storage.Id, point)
            )
            .Distinct()
            .Count();
        var places =
            1
            + Math.Min(
                waiting,
                protocol.DelaysPerSpecimen is { } each ? each * protocol.Storages.Length : waiting
            );
        var specimens = patients.Specimens * Math.Max(1, protocol.Instruments.Length);
        return protocol.TubePlan switch
        {
            TubePlan.TubePerTimePoint => new(
                patients.Id,
                specimens,
                places,
                1,
                null,
                (places + 1) * request.MillilitersOfTube
            ),
            TubePlan.Aliquots => OfPortions(places),
            TubePlan.OneTubeRetested => new(
                patients.Id,
                specimens,
                1,
                1,
                null,
                2 * request.MillilitersOfTube
            ),
        };

        GroupMaterial OfPortions(int portions)
        {
            var tubes = (portions + 1 + PortionsOfTube - 1) / PortionsOfTube;
            return new(
                patients.Id,
                specimens,
                tubes,
                1,
                portions,
                tubes * request.MillilitersOfTube
            );
        }
    }
}
