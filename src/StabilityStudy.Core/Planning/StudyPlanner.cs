namespace StabilityStudy.Core.Planning;

/// <summary>
/// Plans a study from its protocol alone: what it takes, and how often it would support each time point if nothing changed, if half of the published change were true, and if all of it were. Every
/// simulated study is judged by the code that judges a real one; <see cref="CriterionSetCharacteristic"/> says what is supposed and what is left out.
/// </summary>
public static class StudyPlanner
{
    /// <summary>More time points are not simulated, so that a document of any protocol is drawn in seconds.</summary>
    private const int MostTimePoints = 250;

    private static readonly ImmutableArray<double> s_shares = [0, 0.5, 1];

    /// <summary>The plan.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="request">What is asked.</param>
    /// <exception cref="ArgumentNullException">Protocol or request is absent.</exception>
    /// <exception cref="ArgumentException">The number of studies or days is outside its range, or the protocol has no such analyte or group.</exception>
    public static StudyPlan Of(StudyProtocol protocol, PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(request);
        Require(protocol, request);
        var days = request.Days ?? protocol.PlannedDays ?? SupposedFromPlan.UsualDays;
        ImmutableArray<(Analyte Analyte, PatientGroup Group, Storage Storage)> studied =
        [
            .. from analyte in protocol.Analytes
            where request.Analyte is null || request.Analyte == analyte.Id
            from patients in protocol.Groups
            where
                (analyte.Groups.IsEmpty || analyte.Groups.Contains(patients.Id))
                && (request.Group is null || request.Group == patients.Id)
            from storage in protocol.Storages
            where analyte.Storages.IsEmpty || analyte.Storages.Contains(storage.Id)
            select (analyte, patients, storage),
        ];
        var isSimulated =
            studied.Sum(item => protocol.TimePointsOf(item.Analyte, item.Group.Id).Length)
            <= MostTimePoints;
        ImmutableArray<PlannedRow> rows =
        [
            .. studied.Select(item =>
                Row(protocol, item.Analyte, item.Group, item.Storage, days, isSimulated, request)
            ),
        ];
        return new(
            protocol,
            request,
            days,
            request.Days is not null ? DaysOrigin.Asked
                : protocol.PlannedDays is not null ? DaysOrigin.Protocol
                : DaysOrigin.Supposed,
            PlannedMaterial.Of(protocol, request),
            rows,
            request.Detail ? PlanAlternatives.Of(protocol, rows, days, request) : null
        );
    }

    private static void Require(StudyProtocol protocol, PlanRequest request)
    {
        if (request.Studies is < 1 or > PlanRequest.MostStudies || request.Days < 1)
        {
            throw new ArgumentException(
                $"There are from 1 to {PlanRequest.MostStudies} studies on at least one day.",
                nameof(request)
            );
        }

        if (
            (request.Analyte is { } analyte && protocol.Analytes.All(item => item.Id != analyte))
            || (request.Group is { } group && protocol.Groups.All(item => item.Id != group))
        )
        {
            throw new ArgumentException(
                "The protocol has no such analyte or group.",
                nameof(request)
            );
        }
    }

    private static PlannedRow Row(
        StudyProtocol protocol,
        Analyte analyte,
        PatientGroup patients,
        Storage storage,
        int days,
        bool isSimulated,
        PlanRequest request
    )
    {
        var points = protocol.TimePointsOf(analyte, patients.Id);
        var specimens = SpecimensAt(protocol, patients, points.Length);
        CellContext At(TimePoint point) => new(protocol, analyte, patients, storage, point, []);
        var planned = points
            .Select(point =>
                isSimulated
                    ? Point(At(point), specimens, days, request)
                    : new(point, PlannedChange.Of(At(point)), PlanGap.TooMany, false, [])
            )
            .ToImmutableArray();
        return new(
            analyte,
            patients,
            storage,
            specimens,
            PlannedShares.Of(At(points[0]), specimens),
            PlannedShares.Levels(At(points[0])),
            planned,
            request.Joint && isSimulated
                ? JointChances.Of([.. points.Select(At)], planned, specimens, days, request)
                : []
        );
    }

    /// <summary>Where each specimen is tested at some of the time points only, each of these has its part of them.</summary>
    private static int SpecimensAt(StudyProtocol protocol, PatientGroup patients, int points) =>
        protocol.DelaysPerSpecimen is { } each && each < points
            ? Math.Max(1, patients.Specimens * each / points)
            : patients.Specimens;

    private static PlannedTimePoint Point(
        CellContext context,
        int specimens,
        int days,
        PlanRequest request
    )
    {
        var expected = PilotPair.Spread(request.Pilot, PlannedChange.Of(context), context);
        var supposed = SupposedFromPlan.Of(
            context,
            specimens,
            days,
            expected.SpecimenSdPercent,
            out var gap
        );
        return new(
            context.TimePoint,
            expected,
            gap,
            supposed?.RangeIsSupposed ?? false,
            supposed is null || context.Applying.IsEmpty
                ? []
                :
                [
                    .. s_shares
                        .Where(share => share == 0 || expected.Percent is not null)
                        .Select(share =>
                            CellChances.At(
                                share,
                                share * (expected.Percent ?? 0),
                                context,
                                supposed.Results,
                                request
                            )
                        ),
                ]
        );
    }
}
