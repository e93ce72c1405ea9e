using System.Text;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Benchmarks;

/// <summary>
/// A study of any number of rows, made from the protocol of a small one: more patient groups, each of one hundred
/// specimens, and ten analytes tested in each tube, so that cells keep a usual size.
/// </summary>
internal static class GeneratedStudy
{
    private const int SpecimensPerGroup = 100;
    private const int AnalyteCount = 10;

    // Hours after collection at which a tube is spun and tested; the first is the baseline.
    private static readonly (string TimePoint, double Spun, double Tested)[] Tubes =
    [
        ("baseline", 0.3, 0.7),
        ("6 h", 5.6, 6.1),
        ("8 h", 7.6, 8.1),
        ("12 h", 11.6, 12.1),
    ];

    /// <summary>Result rows of one patient group.</summary>
    public static int RowsPerGroup => SpecimensPerGroup * AnalyteCount * Tubes.Length;

    /// <summary>The files of the study.</summary>
    /// <param name="rows">Result rows; rounded up to whole patient groups.</param>
    public static StudyBytes Of(int rows)
    {
        var groups = (rows + RowsPerGroup - 1) / RowsPerGroup;
        var specimens = new StringBuilder(
            "specimen,tube,subject,group,storage,draw_position,collected_at,spun_at,fill_percent,hemolysis,clot,origin\n"
        );
        var results = new StringBuilder(
            "specimen,tube,analyte,time_point,replicate,tested_at,result,unit,run,instrument,lot,operator\n"
        );
        var random = new SeededRandom(3);
        for (var group = 0; group < groups; group++)
        {
            for (var number = 0; number < SpecimensPerGroup; number++)
            {
                AddSpecimen(group, number, specimens, results, random);
            }
        }

        return StudyBytes.Of([
            File(StudyBytes.ProtocolName, Protocol(groups)),
            File(StudyBytes.FactsName, Facts),
            File(StudyFileNames.Usual.Specimens, specimens.ToString()),
            File(StudyFileNames.Usual.Results, results.ToString()),
        ]);
    }

    private static KeyValuePair<string, ReadOnlyMemory<byte>> File(string name, string text) =>
        KeyValuePair.Create(name, (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(text));

    private static void AddSpecimen(
        int group,
        int number,
        StringBuilder specimens,
        StringBuilder results,
        SeededRandom random
    )
    {
        var specimen = string.Create(CultureInfo.InvariantCulture, $"G{group}-{number}");
        var collected = new DateTime(2026, 3, 2, 7, 0, 0).AddDays(number % 10);
        var levels = Enumerable
            .Range(0, AnalyteCount)
            .Select(_ => 35 + 40 * random.NextDouble())
            .ToArray();
        for (var position = 0; position < Tubes.Length; position++)
        {
            var (timePoint, spun, tested) = Tubes[position];
            specimens.Append(
                CultureInfo.InvariantCulture,
                $"{specimen},T{position},S{specimen},g{group},wb-rt,{position + 1},{Time(0)},{Time(spun)},95,none,no,native\n"
            );
            for (var analyte = 0; analyte < AnalyteCount; analyte++)
            {
                var value = levels[analyte] * (1 + 0.004 * tested + 0.02 * random.NextNormal());
                results.Append(
                    CultureInfo.InvariantCulture,
                    $"{specimen},T{position},A{analyte},{timePoint},1,{Time(tested)},{value:0.0},s,{collected:MM-dd}-{position},AN1,R1,LS1\n"
                );
            }
        }

        string Time(double hours) =>
            collected
                .AddMinutes(Math.Round(60 * hours))
                .ToString("yyyy-MM-dd'T'HH:mm:ss'+00:00'", CultureInfo.InvariantCulture);
    }

    private static string Protocol(int groups)
    {
        var text = new StringBuilder(
            """
            format = 1
            code = "SPEED"
            version = "1"
            time_points = ["6 h", "8 h", "12 h"]
            tolerance = { early = "0 min", late = "30 min" }
            baseline_within = "1 h"
            tube_plan = "a tube per time point"
            minimum_days = 5
            window_step = "30 min"
            signatories = [{ role = "author", meaning = "ran this study" }]
            storage = [{ id = "wb-rt", state = "whole blood", cap = "closed", celsius = [18, 25], spin_to_test = "1 h" }]
            eligibility = { fill_percent_min = 90, clot = "reject", source = "speed test" }

            """
        );
        for (var group = 0; group < groups; group++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"[[group]]\nid = \"g{group}\"\nname = \"Group {group}\"\nspecimens = {SpecimensPerGroup}\n"
            );
        }

        for (var analyte = 0; analyte < AnalyteCount; analyte++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"""
                [[analyte]]
                id = "A{analyte}"
                name = "Analyte {analyte}"
                method = "invented"
                unit = "s"
                decimals = 1
                standard_window = {"{"} time = "4 h", source = "speed test" {"}"}
                measuring_interval = [10.0, 300.0]
                decision_levels = [40.0, 60.0]
                drift_shape = "linear"
                error_variance_ratio = 0.5

                """
            );
        }

        var choices = string.Join(
            ", ",
            Enumerable.Range(0, AnalyteCount).Select(i => $"A{i} = \"each\"")
        );
        var means = choices.Replace("each", "mean", StringComparison.Ordinal);
        return text.Append(
                CultureInfo.InvariantCulture,
                $$"""
                [[limit]]
                id = "mean"
                percent = 7.5
                source = "speed test"
                [[limit]]
                id = "each"
                percent = 15
                source = "speed test"
                [[criterion]]
                id = "mean"
                kind = "bias"
                limits = { {{means}} }
                scale = "percent"
                confidence = 0.90
                [[criterion]]
                id = "each"
                kind = "individual"
                limits = { {{choices}} }
                share_percent_min = 85
                confidence = 0.95
                """
            )
            .ToString();
    }

    private const string Facts = """
        format = 1
        title = "A study of many rows"
        facility = "Invented Hospital Laboratory"
        invented = true
        question = "How long does it take?"
        person = [{ code = "LS1", name = "Lab Scientist One", role = "lab scientist" }]
        instrument = [{ id = "AN1", name = "Invented analyzer" }]
        clock = { collected_at = "label printer", tested_at = "analyzer" }
        [[lot]]
        id = "R1"
        kind = "reagent"
        analyte = "A0"
        expires = "2027-01-31"
        """;
}
