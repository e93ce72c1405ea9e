using System.Globalization;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests.OwnTables;

/// <summary>Invented results of twelve specimens at three times, from a seed, from which every export of these tests is made.</summary>
internal static class DeliveredData
{
    /// <summary>A result with its tube.</summary>
    public sealed record Test(
        int Specimen,
        char Tube,
        string Occasion,
        DateTime Collected,
        DateTime Spun,
        DateTime Tested,
        string Result
    )
    {
        public string Code => string.Create(CultureInfo.InvariantCulture, $"N{Specimen:000}");

        public string Subject => string.Create(CultureInfo.InvariantCulture, $"P{Specimen:000}");
    }

    public static IReadOnlyList<Test> Delivered { get; } = Make();

    /// <summary>The plain files.</summary>
    public static StudyBytes Plain { get; } = PlainOf(Delivered);

    /// <summary>The same results some days later.</summary>
    public static IReadOnlyList<Test> Shifted(int days) =>
        [
            .. Delivered.Select(test =>
                test with
                {
                    Collected = test.Collected.AddDays(days),
                    Spun = test.Spun.AddDays(days),
                    Tested = test.Tested.AddDays(days),
                }
            ),
        ];

    /// <summary>The plain files of results.</summary>
    public static StudyBytes PlainOf(IReadOnlyList<Test> tests) =>
        GoodStudy.Of(
            ("protocol.toml", Protocol),
            ("study.toml", Facts("")),
            ("specimens.csv", Specimens(tests)),
            ("results.csv", Results(tests))
        );

    public static string Protocol =>
        GoodStudy.Protocol.Replace(
            "minimum_days = 5",
            "minimum_days = 5\ncontrols = \"kept elsewhere\"",
            StringComparison.Ordinal
        );

    private static string Specimens(IEnumerable<Test> tests) =>
        "specimen,tube,subject,group,storage,collected_at,spun_at,fill_percent,hemolysis,clot\n"
        + string.Concat(
            tests.Select(test =>
                $"{test.Code},{test.Tube},{test.Subject},none,wb-rt,{Iso(test.Collected)},{Iso(test.Spun)},95,none,no\n"
            )
        );

    private static string Results(IEnumerable<Test> tests) =>
        "specimen,tube,analyte,time_point,tested_at,result,unit\n"
        + string.Concat(
            tests.Select(test =>
                $"{test.Code},{test.Tube},aPTT,{test.Occasion},{Iso(test.Tested)},{test.Result},s\n"
            )
        );

    /// <summary>study.toml with a description of the files.</summary>
    public static string Facts(string read, string files = "") =>
        GoodStudy
            .Facts[..GoodStudy.Facts.IndexOf("[[exclusion]]", StringComparison.Ordinal)]
            .Replace(
                "specimens = \"specimens.csv\"\nresults = \"results.csv\"\n",
                files.Length > 0
                    ? files
                    : "specimens = \"specimens.csv\"\nresults = \"results.csv\"\n",
                StringComparison.Ordinal
            ) + read;

    /// <summary>The plain study with the results in another file.</summary>
    public static StudyBytes WithResults(
        string name,
        ReadOnlyMemory<byte> bytes,
        string read,
        string files = ""
    ) =>
        new StudyBytes(Plain.Files.Remove("results.csv"))
            .With(
                "study.toml",
                GoodStudy.Utf8(
                    Facts(
                        read,
                        files.Length > 0
                            ? files
                            : $"specimens = \"specimens.csv\"\nresults = \"{name}\"\n"
                    )
                )
            )
            .With(name, bytes);

    public static string Iso(DateTime time) =>
        time.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    private static List<Test> Make()
    {
        var random = new Random(20260302);
        var tests = new List<Test>();
        for (var specimen = 1; specimen <= 12; specimen++)
        {
            var collected = new DateTime(2026, 3, 2 + (specimen - 1) / 2, 7, 5 * specimen % 60, 0);
            var first = 280 + random.Next(100);
            foreach (
                var (tube, occasion, hours) in new[]
                {
                    ('A', "baseline", 0),
                    ('B', "6 h", 6),
                    ('C', "8 h", 8),
                }
            )
            {
                var tested = collected
                    .AddHours(hours)
                    .AddMinutes(hours == 0 ? 40 : 5 + random.Next(20));
                var tenths = first + hours * 3 + random.Next(10);
                tests.Add(
                    new(
                        specimen,
                        tube,
                        occasion,
                        collected,
                        tested.AddMinutes(-20),
                        tested,
                        specimen == 5 && tube == 'C'
                            ? "CLOT"
                            : (tenths / 10m).ToString("0.0", CultureInfo.InvariantCulture)
                    )
                );
            }
        }

        return tests;
    }
}
