using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Tests.Studies;
using static StabilityStudy.Core.Tests.Analysis.AwkwardStudies;

namespace StabilityStudy.Core.Tests.Analysis;

/// <summary>
/// Studies that come out well for a reason other than a stable specimen: rows copied or typed, tubes that waited
/// otherwise than named, results taken away. None of them stops; each is told.
/// </summary>
public sealed class TooGoodTests
{
    private static readonly ImmutableArray<AwkwardStudy> s_studies =
    [
        new(
            "delayed results copied from the baseline",
            Quiet.Rows(row =>
                row with
                {
                    Result = SmallRows.Reported(
                        SmallRows.Text(30m + (Number(row.Specimen) * 0.3m % 7))
                    ),
                }
            ),
            "Inconclusive",
            "results-unchanged",
            "40 of 40 specimens have the same result at baseline and at 6 h"
        ),
        new(
            "delayed results computed from the baselines",
            SmallStudy.Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        FormattableString.Invariant(
                            $"{30 + (1.7m * i):0.0} | {1 + (0.98m * (30 + (1.7m * i))):0.0}"
                        )
                    )
            ),
            "Supported",
            "spread-below-noise",
            "the changes, taken from a straight line, vary by an SD of 0.0"
        ),
        new(
            "later results made from those before",
            SmallStudy.Of(
                [6, 8],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        FormattableString.Invariant(
                            $"{40 + i}.0 | {40 + i + (i * 7 % 5)}.0 | {40 + i + (i * 7 % 5)}.{i % 2}"
                        )
                    )
            ),
            "Supported, Supported",
            "spread-below-noise",
            "the changes since the time point before"
        ),
        new(
            "few specimens copied as many, with one delay",
            SmallStudy.Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        FormattableString.Invariant(
                            $"{30 + (i % 5 * 3.1m):0.0} | {30 + (i % 5 * 3.3m):0.0}"
                        )
                    )
            ),
            "Supported",
            "same-results",
            "have the same result at every time"
        ),
        new(
            "the same value written in other ways",
            SmallStudy.Of(
                [6],
                Enumerable
                    .Range(0, 40)
                    .Select(i =>
                        FormattableString.Invariant(
                            $"{30 + (i % 5 * 3.1m):0.0}{new string('0', i / 20)} | {30 + (i % 5 * 3.3m):0.0}"
                        )
                    )
            ),
            "Supported",
            "same-results",
            "have the same result at every time"
        ),
        new(
            "delays typed as planned",
            Quiet,
            "Supported",
            "times-as-planned",
            "40 of 40 delayed results were tested at the planned delay to the minute"
        ),
        new(
            "eight people collected in one minute",
            Quiet.OnDays(5),
            "Supported",
            "collected-in-one-minute",
            "Up to 8 subjects"
        ),
        new(
            "every time in UTC and no time zone",
            new(Quiet.Inputs with { Facts = Quiet.Inputs.Facts with { TimeZone = null } }),
            "Supported",
            "days-of-utc",
            "All 80 collection times"
        ),
        new(
            "whole blood that was spun soon",
            Quiet
                .Storage(storage => storage with { SpinToTest = TimeSpan.FromHours(12) })
                .Delayed(tube => tube with { SpunAt = tube.CollectedAt.AddMinutes(45) }),
            "Supported",
            "waited-mostly-spun",
            "waited unspun for at most"
        ),
        new(
            "tubes spun at the minute of their test",
            Quiet.Delayed(tube => tube with { SpunAt = tube.CollectedAt.AddHours(6) }),
            "Supported",
            "no-time-for-spinning",
            "too soon to spin it"
        ),
        new(
            "every baseline grossly hemolyzed",
            Quiet.Tubes(tube => tube with { Hemolysis = Hemolysis.Gross }),
            "Supported",
            "hemolysis-at-baseline",
            "40 baseline tubes"
        ),
        new(
            "tested before the tube was received",
            Quiet.Tubes(tube => tube with { ReceivedAt = tube.CollectedAt.AddHours(5) }),
            "Supported",
            "tested-before-receipt",
            "40 results tested before"
        ),
        new(
            "a lost decimal point",
            Quiet.Result(3, 6, "330"),
            "Supported",
            "decimal-point-moved",
            "aPTT, specimen S003 at 6 h: with the decimal point one place away"
        ),
        new(
            "another unit",
            Quiet.Result(3, 6, "33000"),
            "Supported",
            "result-of-other-magnitude",
            "specimen S003 is the first"
        ),
        new(
            "two digits exchanged",
            Quiet.Result(5, 6, "53.0"),
            "Inconclusive",
            "digits-exchanged",
            "aPTT, specimen S005 at 6 h: with two neighboring digits exchanged"
        ),
        new(
            "beyond the interval after a usual baseline",
            Quiet.Result(3, 6, ">180"),
            "Supported",
            "left-measuring-interval",
            "specimen S003 at 6 h: the delayed result lies beyond the measuring interval"
        )
        {
            Silent = "beyond-measuring-interval",
        },
        new(
            "beyond the interval at both times",
            Quiet.Result(3, 0, ">180").Result(3, 6, ">180"),
            "Supported",
            "beyond-measuring-interval",
            "specimen S003 at 6 h"
        )
        {
            Silent = "left-measuring-interval",
        },
        new(
            "beyond the interval after a baseline near its end",
            Quiet.Result(3, 0, "175.0").Result(3, 6, ">180"),
            "Supported",
            "beyond-measuring-interval",
            "specimen S003 at 6 h"
        )
        {
            Silent = "left-measuring-interval",
        },
        new(
            "more delays than planned for a specimen",
            SmallStudy
                .Quiet(40, 6, 8)
                .Protocol(protocol => protocol with { DelaysPerSpecimen = 1 }),
            "Supported, Supported",
            "more-delays-than-planned",
            "40 specimens tested at more than the planned 1 delay"
        ),
        new(
            "second results far from the first",
            Enumerable
                .Range(0, 3)
                .Aggregate(
                    Quiet.Protocol(protocol => protocol with { Replicates = 2 }),
                    (study, i) =>
                        study.Again(i, 6, row => row with { Result = SmallRows.Reported("45.0") })
                )
                .Analyte(analyte => analyte with { BetweenRunCvPercent = 2 }),
            "Inconclusive",
            "replicates-disagree",
            "3 tubes with results of one time that differ by more than 6 times"
        ),
        new(
            "offsets that shorten the delays",
            Quiet.Tubes(tube =>
                tube with
                {
                    CollectedAt = new DateTimeOffset(
                        tube.CollectedAt.DateTime.AddHours(3),
                        tube.CollectedAt.Offset + TimeSpan.FromHours(3)
                    ),
                }
            ),
            "Supported",
            "offsets-differ",
            "40 specimens"
        ),
        new(
            "an amount that dwarfs the results",
            Quiet.Protocol(protocol =>
                protocol with
                {
                    Limits =
                    [
                        SmallProtocol.Bias with
                        {
                            AbsoluteInUnit = 20,
                        },
                        SmallProtocol.Each with
                        {
                            AbsoluteInUnit = 30,
                        },
                    ],
                    Criteria =
                    [
                        SmallProtocol.MeanCriterion with
                        {
                            Scale = ChangeScale.Share,
                        },
                        SmallProtocol.EachCriterion,
                    ],
                }
            ),
            "Supported",
            "wide-limit",
            "of the middle baseline"
        ),
        new(
            "many results beyond the measuring interval",
            Enumerable
                .Range(0, 6)
                .Aggregate(Quiet, (study, i) => study.Result(i, 0, ">180").Result(i, 6, ">180")),
            "Supported",
            "many-beyond-interval",
            "6 specimens beyond the measuring interval"
        ),
        new(
            "excluded with a change beyond the limit",
            Quiet.Result(3, 6, "45.0").Exclude(3, 6),
            "Supported",
            "excluded-beyond-limit",
            "S003"
        ),
    ];

    public static TheoryData<string> Rows => Names(s_studies);

    [Theory]
    [MemberData(nameof(Rows))]
    public void It_is_told(string name) => Holds(s_studies, name);

    private static int Number(string specimen) =>
        int.Parse(specimen.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture);
}
