using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;
using StabilityStudy.Statistics.Drift;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Rows of an invented study in which everything is as it should be.</summary>
internal static class StudyRows
{
    private static readonly int[] s_hours = [6, 8];

    public static StudyProtocol Protocol() =>
        new(
            "ODD-1",
            "1",
            [.. s_hours.Select(hour => new TimePoint(TimeSpan.FromHours(hour)))],
            new Tolerance(TimeSpan.Zero, TimeSpan.FromMinutes(30)),
            TimeSpan.FromHours(1),
            TubePlan.TubePerTimePoint,
            Replicates: 1,
            MinimumDays: 5,
            TimeSpan.FromMinutes(30),
            [
                new Signatory("author", "ran this study"),
                new Signatory("approver", "approves its conclusion"),
            ],
            [Storage("wb-rt", 18, 25)],
            [new PatientGroup("none", "No anticoagulant", 40, null)],
            new Eligibility(90, 55, RejectClot: true, "invented"),
            [Analyte("aPTT", "Activated partial thromboplastin time")],
            [new Limit("bias", 7.5m, null, "invented"), new Limit("each", 15m, null, "invented")],
            [
                new BiasCriterion("mean", [new("aPTT", "bias")], [], 0.90, ChangeScale.Percent),
                new IndividualCriterion("each", [new("aPTT", "each")], [], 0.95, 85m),
            ]
        )
        {
            Controls = ControlRule.KeptElsewhere,
        };

    public static Storage Storage(string id, int lowest, int highest) =>
        new(id, StorageState.WholeBlood, Cap.Closed, lowest, highest, TimeSpan.FromHours(1));

    public static Analyte Analyte(string id, string name) =>
        new(
            id,
            name,
            null,
            null,
            "s",
            1,
            new WindowRule(TimeSpan.FromHours(4), "invented"),
            new WindowRule(TimeSpan.FromHours(4), "invented"),
            2.1m,
            new MeasuringInterval(20, 180),
            [40, 60],
            1,
            DriftShape.Logarithmic
        );

    public static StudyAnalysis Analyze(StudyProtocol protocol, IEnumerable<SpecimenPlan> specimens)
    {
        var tubes = specimens
            .SelectMany(specimen => s_hours.Prepend(0).Select(hour => (specimen, hour)))
            .Select((item, i) => (item.hour, Row: Tube(item.specimen, item.hour, i + 2)))
            .ToArray();
        var results = tubes
            .SelectMany(tube => protocol.Analytes.Select(analyte => (tube, analyte)))
            .Select((item, i) => Result(item.tube.Row, item.tube.hour, item.analyte, i + 2));
        var hash = new string('a', 64);
        return StudyAnalyzer.Analyze(
            new StudyInputs(
                protocol,
                new StudyFacts(
                    "An invented study at the edge",
                    "Invented laboratory",
                    "May whole blood wait for 6 or 8 hours?",
                    true,
                    "Etc/UTC",
                    [],
                    [],
                    [],
                    [],
                    StudyFileNames.Usual,
                    [],
                    []
                )
                {
                    EndedEarly = new("nobody else came", "LS1", new DateOnly(2026, 12, 31), 5),
                },
                [.. tubes.Select(tube => tube.Row)],
                [.. results]
            ),
            new StudyIdentity(hash, [new FileHash("protocol.toml", hash)], []),
            [],
            "1.2.3"
        );
    }

    private static TubeRow Tube(SpecimenPlan specimen, int hour, int line)
    {
        var collected = new DateTimeOffset(2026, 3, 2, 8, 0, 0, TimeSpan.Zero).AddDays(
            specimen.Number % 10
        );
        var code = string.Create(CultureInfo.InvariantCulture, $"S{specimen.Number:000}");
        return new TubeRow(
            line,
            code,
            string.Create(CultureInfo.InvariantCulture, $"{code}-{hour}"),
            "P" + code,
            specimen.Group,
            specimen.Storage,
            null,
            collected,
            null,
            collected.AddHours(hour).AddMinutes(hour == 0 ? 15 : -20),
            null,
            null,
            null,
            specimen.FillPercent,
            4,
            40,
            Hemolysis.None,
            ClotCheck.No,
            "",
            Origin.Native
        );
    }

    private static ResultRow Result(TubeRow tube, int hour, Analyte analyte, int line)
    {
        var value =
            30m
            + (line % 13) / 10m
            + hour / 10m
            + int.Parse(tube.Specimen[1..], CultureInfo.InvariantCulture) % 17;
        return new ResultRow(
            line,
            tube.Specimen,
            tube.Tube,
            analyte.Id,
            new TestOccasion(hour == 0 ? null : new TimePoint(TimeSpan.FromHours(hour))),
            1,
            tube.CollectedAt.AddHours(hour).AddMinutes(hour == 0 ? 40 : 5),
            new MeasuredResult(value.ToString(CultureInfo.InvariantCulture), value),
            new TestConditions(
                analyte.Unit,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{tube.CollectedAt:yyyy-MM-dd}-{hour}"
                ),
                "AN1",
                "R1",
                "",
                "LS1",
                "",
                ""
            )
        );
    }
}
