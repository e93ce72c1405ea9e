using System.Globalization;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.OwnTables.Shapes;

/// <summary>Invented results of two analytes at three times, from a seed: numbers, limits and words in place of results.</summary>
internal sealed class ShapedData
{
    public static readonly string[] Analytes = ["aPTT", "PT"];
    public static readonly string[] Occasions = ["baseline", "6 h", "8 h"];

    private static readonly string[] s_words = ["CLOT", "QNS", "NA", "<20.0", ">180"];

    private ShapedData(ImmutableArray<Tube> tubes) => Tubes = tubes;

    /// <summary>A tube with its results, one an analyte.</summary>
    public sealed record Tube(
        int Number,
        int Place,
        DateTime Collected,
        DateTime Spun,
        DateTime Tested,
        ImmutableArray<string> Results
    )
    {
        public string Specimen => string.Create(CultureInfo.InvariantCulture, $"N{Number:000}");

        public string Letter => "ABC"[Place].ToString();

        public string Occasion => Occasions[Place];
    }

    /// <summary>The tubes in order of specimens and times.</summary>
    public ImmutableArray<Tube> Tubes { get; }

    /// <summary>The tubes of each specimen.</summary>
    public IEnumerable<ImmutableArray<Tube>> Specimens =>
        Tubes.GroupBy(tube => tube.Number).Select(tubes => tubes.ToImmutableArray());

    public static ShapedData Of(int seed, int specimens = 8)
    {
        var random = new Random(seed);
        var tubes = ImmutableArray.CreateBuilder<Tube>();
        for (var number = 1; number <= specimens; number++)
        {
            // Days above 12 cannot be taken for months.
            var collected = new DateTime(2026, 3, 13 + (number % 9), 7, 5 * number % 60, 0);
            var first = new[] { 280 + random.Next(120), 110 + random.Next(60) };
            for (var place = 0; place < Occasions.Length; place++)
            {
                var tested = collected
                    .AddHours(place == 0 ? 0 : 4 + (2 * place))
                    .AddMinutes(place == 0 ? 40 : 5 + random.Next(20));
                tubes.Add(
                    new(
                        number,
                        place,
                        collected,
                        tested.AddMinutes(-20),
                        tested,
                        [
                            .. first.Select(tenths =>
                                random.Next(15) == 0
                                    ? s_words[random.Next(s_words.Length)]
                                    : ((tenths + random.Next(30)) / 10m).ToString(
                                        "0.0",
                                        CultureInfo.InvariantCulture
                                    )
                            ),
                        ]
                    )
                );
            }
        }

        return new(tubes.ToImmutable());
    }

    /// <summary>The study in the plain form.</summary>
    public StudyBytes Plain =>
        GoodStudy.Of(
            ("protocol.toml", Protocol),
            ("study.toml", DeliveredData.Facts("")),
            ("specimens.csv", PlainSpecimens(tube => tube.Letter)),
            ("results.csv", PlainResults(tube => tube.Letter))
        );

    /// <summary>The same with the tubes that a file of pairs has.</summary>
    public StudyBytes PlainOfPairs =>
        GoodStudy.Of(
            ("protocol.toml", Protocol),
            ("study.toml", DeliveredData.Facts("")),
            ("specimens.csv", PlainSpecimens(OfPair)),
            ("results.csv", PlainResults(OfPair))
        );

    public static string Protocol =>
        DeliveredData
            .Protocol.Replace(
                "[[limit]]\nid = \"aptt-bias\"",
                """
                [[analyte]]
                id = "PT"
                name = "Prothrombin time"
                unit = "s"
                decimals = 1
                standard_window = { time = "24 h", source = "common practice" }
                cv_percent = { between_run = 2.5 }
                measuring_interval = [8.0, 180.0]

                [[limit]]
                id = "aptt-bias"
                """,
                StringComparison.Ordinal
            )
            .Replace(
                "aPTT = \"aptt-bias\"",
                "aPTT = \"aptt-bias\", PT = \"aptt-bias\"",
                StringComparison.Ordinal
            )
            .Replace(
                "aPTT = \"aptt-each\"",
                "aPTT = \"aptt-each\", PT = \"aptt-each\"",
                StringComparison.Ordinal
            );

    private static string OfPair(Tube tube) => tube.Place == 0 ? "B" : tube.Occasion;

    private string PlainSpecimens(Func<Tube, string> code) =>
        "specimen,tube,subject,group,storage,collected_at,spun_at\n"
        + string.Concat(
            Tubes.Select(tube =>
                $"{tube.Specimen},{code(tube)},{tube.Specimen},none,wb-rt,{DeliveredData.Iso(tube.Collected)},{DeliveredData.Iso(tube.Spun)}\n"
            )
        );

    private string PlainResults(Func<Tube, string> code) =>
        "specimen,tube,analyte,time_point,tested_at,result,unit\n"
        + string.Concat(
            Tubes.SelectMany(tube =>
                Analytes.Select(
                    (analyte, i) =>
                        $"{tube.Specimen},{code(tube)},{analyte},{tube.Occasion},{DeliveredData.Iso(tube.Tested)},{tube.Results[i]},s\n"
                )
            )
        );
}
