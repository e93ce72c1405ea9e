using System.Text;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Benchmarks;

/// <summary>
/// A study of any number of rows: ten analytes tested in each of the five tubes of a specimen. The rows may lie in many
/// cells of a usual size, as in a study of many sites, or in few cells of very many specimens, as in routine data of years.
/// </summary>
internal static class GeneratedStudy
{
    /// <summary>What asks for the files of such a study: result rows, specimens of each patient group and folder follow.</summary>
    public const string Word = "make-study";

    private const int AnalyteCount = 10;
    private const int SpecimensPerDay = 100;
    private const int FewestDays = 10;

    // Hours after collection at which a tube is spun and tested; the first is the baseline.
    private static readonly (string TimePoint, double Spun, double Tested)[] Tubes =
    [
        ("baseline", 0.3, 0.6),
        ("6 h", 5.6, 6.1),
        ("8 h", 7.6, 8.1),
        ("12 h", 11.6, 12.1),
        ("24 h", 23.6, 24.1),
    ];

    /// <summary>The files of the study.</summary>
    /// <param name="rows">Result rows; rounded up to whole patient groups.</param>
    /// <param name="specimensPerGroup">Specimens of each patient group.</param>
    public static StudyBytes Of(int rows, int specimensPerGroup)
    {
        var rowsPerGroup = specimensPerGroup * AnalyteCount * Tubes.Length;
        var groups = (rows + rowsPerGroup - 1) / rowsPerGroup;
        var days = Math.Max(FewestDays, groups * specimensPerGroup / SpecimensPerDay);
        var specimens = new StringBuilder(
            "specimen,tube,subject,group,storage,draw_position,collected_at,spun_at,fill_percent,hematocrit_percent,hemolysis,clot,origin\n"
        );
        var results = new StringBuilder(
            "specimen,tube,analyte,time_point,replicate,tested_at,result,unit,run,instrument,lot,operator\n"
        );
        var random = new SeededRandom(3);
        for (var number = 0; number < groups * specimensPerGroup; number++)
        {
            AddSpecimen(
                number / specimensPerGroup,
                number,
                number % days,
                specimens,
                results,
                random
            );
        }

        return StudyBytes.Of([
            File(StudyBytes.ProtocolName, Protocol(groups, specimensPerGroup)),
            File(StudyBytes.FactsName, Facts(days)),
            File(StudyFileNames.Usual.Specimens, specimens.ToString()),
            File(StudyFileNames.Usual.Results, results.ToString()),
            File(StudyFileNames.Usual.Controls, Controls(days, random)),
        ]);
    }

    private static KeyValuePair<string, ReadOnlyMemory<byte>> File(string name, string text) =>
        KeyValuePair.Create(name, (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(text));

    private static DateTime Day(int day) =>
        new DateTime(2026, 3, 2, 0, 0, 0, DateTimeKind.Unspecified).AddDays(day);

    private static string Run(int day, int position) =>
        string.Create(CultureInfo.InvariantCulture, $"{Day(day):yyyy-MM-dd}-{position}");

    private static string Written(DateTime time) =>
        time.ToString("yyyy-MM-dd'T'HH:mm:ss'+00:00'", CultureInfo.InvariantCulture);

    /// <summary>One tube in a hundred has clotted, one result in two hundred is missing, and a few lie beyond the measuring interval.</summary>
    private static void AddSpecimen(
        int group,
        int number,
        int day,
        StringBuilder specimens,
        StringBuilder results,
        SeededRandom random
    )
    {
        var specimen = string.Create(CultureInfo.InvariantCulture, $"G{group}-{number:00000}");
        var collected = Day(day).AddMinutes((7 * 60) + (int)(120 * random.NextDouble()));
        var hematocrit = 36 + (int)(10 * random.NextDouble());
        var levels = Enumerable
            .Range(0, AnalyteCount)
            .Select(_ => 35 + 40 * random.NextDouble())
            .ToArray();
        for (var position = 0; position < Tubes.Length; position++)
        {
            var (timePoint, spun, tested) = Tubes[position];
            var tube = (char)('A' + position);
            var clot = random.NextDouble() < 0.01;
            specimens.Append(
                CultureInfo.InvariantCulture,
                $"{specimen},{tube},S{number:00000},g{group},wb-rt,{(number + position) % Tubes.Length + 1},{Time(0)},{Time(spun)},{92 + (int)(9 * random.NextDouble())},{hematocrit},none,{(clot ? "yes" : "no")},native\n"
            );
            for (var analyte = 0; analyte < AnalyteCount; analyte++)
            {
                var value = levels[analyte] * (1 + 0.001 * tested + 0.02 * random.NextNormal());
                var result =
                    clot || random.NextDouble() < 0.005 ? "NA"
                    : value > 74 ? ">74.0"
                    : value.ToString("0.0", CultureInfo.InvariantCulture);
                results.Append(
                    CultureInfo.InvariantCulture,
                    $"{specimen},{tube},A{analyte},{timePoint},1,{Time(tested + 0.02 * analyte)},{result},s,{Run(day, position)},AN1,R{analyte},LS1\n"
                );
            }
        }

        string Time(double hours) => Written(collected.AddMinutes(Math.Round(60 * hours)));
    }

    private static string Controls(int days, SeededRandom random)
    {
        var text = new StringBuilder(
            "control,analyte,run,tested_at,result,unit,target,allowed_low,allowed_high,kind\n"
        );
        for (var day = 0; day < days; day++)
        {
            for (var position = 0; position < Tubes.Length; position++)
            {
                var tested = Written(Day(day).AddHours(7 + Tubes[position].Tested));
                for (var analyte = 0; analyte < AnalyteCount; analyte++)
                {
                    text.Append(
                        CultureInfo.InvariantCulture,
                        $"QC-1,A{analyte},{Run(day, position)},{tested},{30 + 0.5 * random.NextNormal():0.0},s,30.0,27.0,33.0,control\nQC-2,A{analyte},{Run(day, position)},{tested},{64 + random.NextNormal():0.0},s,64.0,58.0,70.0,control\n"
                    );
                }
            }
        }

        return text.ToString();
    }

    private static string Protocol(int groups, int specimensPerGroup)
    {
        var text = new StringBuilder(
            """
            format = 1
            code = "SPEED"
            version = "1"
            time_points = ["6 h", "8 h", "12 h", "24 h"]
            tolerance = { early = "0 min", late = "30 min" }
            baseline_within = "1 h"
            tube_plan = "a tube per time point"
            minimum_days = 5
            window_step = "30 min"
            signatories = [{ role = "author", meaning = "ran this study" }]
            storage = [{ id = "wb-rt", state = "whole blood", cap = "closed", celsius = [18, 25], spin_to_test = "1 h" }]
            eligibility = { fill_percent_min = 90, hematocrit_percent_max = 55, clot = "reject", source = "speed test" }

            """
        );
        for (var group = 0; group < groups; group++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"[[group]]\nid = \"g{group}\"\nname = \"Group {group}\"\nspecimens = {specimensPerGroup * 9 / 10}\n"
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
                measuring_interval = [10.0, 74.0]
                decision_levels = [40.0, 60.0]
                cv_percent = {"{"} between_run = 2.0 {"}"}
                manufacturer_limit = {"{"} time = "4 h", document = "invented" {"}"}
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

    private static string Facts(int days)
    {
        var text = new StringBuilder(
            """
            format = 1
            title = "A study of many rows"
            facility = "Invented Hospital Laboratory"
            invented = true
            question = "How long does it take?"
            person = [{ code = "LS1", name = "Lab Scientist One", role = "lab scientist" }]
            instrument = [{ id = "AN1", name = "Invented analyzer" }]
            clock = { collected_at = "label printer", tested_at = "analyzer" }

            """
        );
        for (var analyte = 0; analyte < AnalyteCount; analyte++)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"[[lot]]\nid = \"R{analyte}\"\nkind = \"reagent\"\nanalyte = \"A{analyte}\"\nexpires = \"{Day(days + 1):yyyy-MM-dd}\"\n"
            );
        }

        return text.ToString();
    }
}
