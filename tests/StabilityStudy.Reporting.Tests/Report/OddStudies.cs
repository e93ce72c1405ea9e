using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Criteria.Bias;
using StabilityStudy.Core.Criteria.Individual;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Studies at the edges of what the report has to show.</summary>
internal static class OddStudies
{
    private const string LongName = "Activated partial thromboplastin time, kaolin, low phospholi";

    public static ImmutableSortedDictionary<string, StudyAnalysis> All { get; } =
        new Dictionary<string, StudyAnalysis>(StringComparer.Ordinal)
        {
            ["no pair"] = StudyRows.Analyze(StudyRows.Protocol(), []),
            ["one pair"] = StudyRows.Analyze(StudyRows.Protocol(), Specimens(1, "none")),
            ["40 pairs"] = StudyRows.Analyze(StudyRows.Protocol(), Specimens(40, "none")),
            ["200 pairs"] = StudyRows.Analyze(StudyRows.Protocol(), Specimens(200, "none")),
            ["no criterion"] = StudyRows.Analyze(
                StudyRows.Protocol() with
                {
                    Criteria = [],
                },
                Specimens(20, "none")
            ),
            ["all beyond the measuring interval"] = StudyRows.Analyze(
                StudyRows.Protocol() with
                {
                    Analytes =
                    [
                        StudyRows.Analyte("aPTT", "aPTT") with
                        {
                            MeasuringInterval = new MeasuringInterval(100, 180),
                        },
                    ],
                },
                Specimens(20, "none")
            ),
            ["a group without an eligible pair"] = StudyRows.Analyze(
                TwoGroups(),
                [
                    .. Specimens(30, "none"),
                    .. Specimens(30, "ufh").Select(specimen => specimen with { FillPercent = 50 }),
                ]
            ),
            ["two storages"] = StudyRows.Analyze(
                StudyRows.Protocol() with
                {
                    Storages =
                    [
                        StudyRows.Storage("wb-rt", 18, 25),
                        StudyRows.Storage("wb-cool", 8, 12),
                    ],
                },
                [
                    .. Specimens(30, "none"),
                    .. Specimens(30, "none")
                        .Select(specimen =>
                            specimen with
                            {
                                Number = specimen.Number + 500,
                                Storage = "wb-cool",
                            }
                        ),
                ]
            ),
            ["three analytes"] = StudyRows.Analyze(
                ForAnalytes(("aPTT", "aPTT"), ("PT", "Prothrombin time"), ("FIB", "Fibrinogen")),
                Specimens(30, "none")
            ),
            ["two analytes in two groups"] = StudyRows.Analyze(
                ForAnalytes(("aPTT", "aPTT"), ("PT", "Prothrombin time")) with
                {
                    Groups = TwoGroups().Groups,
                },
                [.. Specimens(30, "none"), .. Specimens(30, "ufh")]
            ),
            ["a name of 60 characters"] = StudyRows.Analyze(
                ForAnalytes(("aPTT", LongName)),
                Specimens(30, "none")
            ),
            ["two pairs"] = Of(2, protocol => protocol),
            ["three pairs"] = Of(3, protocol => protocol),
            ["seven pairs"] = Of(7, protocol => protocol),
            ["19 pairs"] = Of(19, protocol => protocol),
            ["60 pairs"] = Of(60, protocol => protocol),
            ["120 pairs"] = Of(120, protocol => protocol),
            ["twelve analytes"] = StudyRows.Analyze(
                ForAnalytes([
                    .. Enumerable.Range(1, 12).Select(i => ($"A{i}", $"Analyte number {i}")),
                ]),
                Specimens(20, "none")
            ),
            ["five analytes in two groups"] = StudyRows.Analyze(
                ForAnalytes([.. Enumerable.Range(1, 5).Select(i => ($"A{i}", LongName))]) with
                {
                    Groups = TwoGroups().Groups,
                },
                [.. Specimens(12, "none"), .. Specimens(3, "ufh")]
            ),
            ["the mean alone"] = Of(
                30,
                protocol => protocol with { Criteria = [protocol.Criteria[0]] }
            ),
            ["single specimens alone"] = Of(
                30,
                protocol => protocol with { Criteria = [protocol.Criteria[1]] }
            ),
            ["no decision level"] = OfAnalyte(analyte => analyte with { DecisionLevels = [] }),
            ["twelve decision levels"] = OfAnalyte(analyte =>
                analyte with
                {
                    DecisionLevels = [.. Enumerable.Range(26, 12).Select(level => (decimal)level)],
                }
            ),
            ["the longest words of the laboratory"] = Of(30, LongestWords),
            ["no imprecision"] = OfAnalyte(analyte => analyte with { BetweenRunCvPercent = null }),
            ["no manufacturer's limit"] = OfAnalyte(analyte =>
                analyte with
                {
                    ManufacturerLimit = null,
                    Method = null,
                    Loinc = null,
                }
            ),
            ["no measuring interval"] = OfAnalyte(analyte =>
                analyte with
                {
                    MeasuringInterval = null,
                }
            ),
            ["quadratic drift"] = OfAnalyte(analyte =>
                analyte with
                {
                    DriftShape = Statistics.Drift.DriftShape.Quadratic,
                }
            ),
            ["limits in the unit"] = Of(
                30,
                protocol =>
                    protocol with
                    {
                        Limits =
                        [
                            .. protocol.Limits.Select(limit =>
                                limit with
                                {
                                    Percent = null,
                                    AbsoluteInUnit = 4,
                                }
                            ),
                        ],
                        Criteria = OnScale(protocol, ChangeScale.Absolute),
                    }
            ),
            ["log-ratio"] = Of(
                30,
                protocol => protocol with { Criteria = OnScale(protocol, ChangeScale.LogRatio) }
            ),
            ["shares of the allowance"] = Of(
                30,
                protocol => protocol with { Criteria = OnScale(protocol, ChangeScale.Share) }
            ),
            ["every other tube underfilled"] = StudyRows.Analyze(
                StudyRows.Protocol(),
                Specimens(40, "none")
                    .Select(specimen =>
                        specimen with
                        {
                            FillPercent = specimen.Number % 2 == 0 ? 60 : 100,
                        }
                    )
            ),
            ["a revision with words read as others and frozen portions"] = RevisedStudy.Of(
                StudyRows.Analyze(StudyRows.Protocol(), Specimens(40, "none"))
            ),
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    public static TheoryData<string> Names => [.. All.Keys];

    public static IEnumerable<SpecimenPlan> Specimens(int count, string group) =>
        Enumerable
            .Range(group == "none" ? 1 : 301, count)
            .Select(number => new SpecimenPlan(number, group, "wb-rt", 100));

    private static StudyAnalysis Of(int pairs, Func<StudyProtocol, StudyProtocol> change) =>
        StudyRows.Analyze(change(StudyRows.Protocol()), Specimens(pairs, "none"));

    private static StudyAnalysis OfAnalyte(Func<Analyte, Analyte> change) =>
        Of(
            30,
            protocol => protocol with { Analytes = [change(StudyRows.Analyte("aPTT", "aPTT"))] }
        );

    private static ImmutableArray<Criterion> OnScale(StudyProtocol protocol, ChangeScale scale) =>
        [
            .. protocol.Criteria.Select(criterion =>
                criterion is BiasCriterion bias ? bias with { Scale = scale } : criterion
            ),
        ];

    /// <summary>Every word that only a laboratory can give, as long as its key allows.</summary>
    private static StudyProtocol LongestWords(StudyProtocol protocol)
    {
        var rationale = new Rationale(OfLength(60), OfLength(200));
        return protocol with
        {
            Analytes =
            [
                protocol.Analytes[0] with
                {
                    DecisionLevels = [38, 40],
                    LevelMeanings =
                    [
                        new(38, null, OfLength(120), OfLength(120)),
                        new(40, null, OfLength(120), OfLength(120)),
                    ],
                },
            ],
            Limits = [.. protocol.Limits.Select(limit => limit with { Rationale = rationale })],
            Criteria = [protocol.Criteria[0], protocol.Criteria[1] with { Rationale = rationale }],
        };
    }

    private static string OfLength(int length) =>
        string.Concat(Enumerable.Repeat("so many words ", length))[..length].TrimEnd();

    private static StudyProtocol TwoGroups()
    {
        var protocol = StudyRows.Protocol();
        return protocol with
        {
            Groups = protocol.Groups.Add(
                new PatientGroup("ufh", "Unfractionated heparin", 40, TimeSpan.FromHours(1))
            ),
        };
    }

    private static StudyProtocol ForAnalytes(params (string Id, string Name)[] analytes) =>
        StudyRows.Protocol() with
        {
            Analytes = [.. analytes.Select(item => StudyRows.Analyte(item.Id, item.Name))],
            Criteria =
            [
                new BiasCriterion(
                    "mean",
                    [.. analytes.Select(item => new LimitChoice(item.Id, "bias"))],
                    [],
                    0.90,
                    ChangeScale.Percent
                ),
                new IndividualCriterion(
                    "each",
                    [.. analytes.Select(item => new LimitChoice(item.Id, "each"))],
                    [],
                    0.95,
                    85m
                ),
            ],
        };
}

/// <summary>A specimen with a tube for every time.</summary>
internal sealed record SpecimenPlan(int Number, string Group, string Storage, decimal FillPercent);
