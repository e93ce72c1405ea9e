using System.Globalization;
using System.Text;
using StabilityStudy.Files.Tests.OwnTables;

namespace StabilityStudy.Files.Tests.Suggestions;

/// <summary>Results as some system might export them: dialect, words, order and shape are drawn from a seed.</summary>
internal sealed class RandomExport
{
    private static readonly (
        string Specimen,
        string Tube,
        string Test,
        string Result,
        string Unit,
        string When,
        string Day,
        string Clock,
        string Occasion,
        string Name
    )[] s_words =
    [
        (
            "Specimen",
            "Tube",
            "Test",
            "Result",
            "Units",
            "Tested at",
            "Test date",
            "Test time",
            "Time point",
            "Patient name"
        ),
        (
            "Probe",
            "Röhrchen",
            "Untersuchung",
            "Ergebnis",
            "Einheit",
            "Messzeit",
            "Messdatum",
            "Messuhrzeit",
            "Zeitpunkt",
            "Nachname"
        ),
        (
            "Échantillon",
            "N° tube",
            "Analyse",
            "Résultat",
            "Unité",
            "Heure mesure",
            "Date mesure",
            "Heure de mesure",
            "Délai",
            "Nom du patient"
        ),
        (
            "Muestra",
            "Tubo",
            "Prueba",
            "Resultado",
            "Unidad",
            "Fecha y hora resultado",
            "Fecha resultado",
            "Hora resultado",
            "Momento",
            "Apellidos"
        ),
    ];

    private static readonly (string Day, string Clock)[] s_forms =
    [
        ("dd.MM.yyyy", "HH:mm"),
        ("d.M.yyyy", "H:mm"),
        ("dd/MM/yyyy", "HH:mm:ss"),
        ("MM/dd/yyyy", "hh:mm tt"),
        ("M/d/yy", "h:mm tt"),
        ("dd.MM.yy", "HH:mm"),
        ("yyyy-MM-dd", "HH:mm"),
        ("yyyy/MM/dd", "HH:mm"),
        ("dd-MMM-yyyy", "HH:mm"),
        ("dd-MM-yy", "HH:mm"),
    ];

    private readonly Random _random;
    private readonly IReadOnlyList<DeliveredData.Test> _tests;

    private RandomExport(Random random, IReadOnlyList<DeliveredData.Test> tests) =>
        (_random, _tests) = (random, tests);

    /// <summary>Name of the file.</summary>
    public string Name { get; private init; } = "";

    /// <summary>What it holds.</summary>
    public byte[] Bytes { get; private set; } = [];

    /// <summary>How it is written, for the message of a failed test.</summary>
    public string Description { get; private set; } = "";

    /// <summary>Whether its days can be taken for months.</summary>
    public bool IsAmbiguous { get; private set; }

    /// <summary>An export.</summary>
    public static RandomExport Of(int seed, IReadOnlyList<DeliveredData.Test> tests)
    {
        var random = new Random(seed);
        var export = new RandomExport(random, tests)
        {
            Name = new[] { "export.csv", "analyzer.txt", "lis.tsv", "Ergebnisse März.csv" }[
                random.Next(4)
            ],
        };
        export.Write();
        return export;
    }

    private bool Chance(double share) => _random.NextDouble() < share;

    private void Write()
    {
        var words = s_words[_random.Next(s_words.Length)];
        var (day, clock) = s_forms[_random.Next(s_forms.Length)];
        var delimiter = ";,\t|"[_random.Next(4)];
        var decimalSign = Chance(0.5) ? ',' : '.';
        var unit = new[] { "s", "sec", "Sek", "seconds" }[_random.Next(4)];
        var analyte = new[] { "aPTT", "APTT", "PTT", "aPTT-FS" }[_random.Next(4)];
        var unitPlace = _random.Next(3);
        var hasTubes = Chance(0.5);
        var sign = "-./_"[_random.Next(4)];
        var hasOccasion = Chance(0.5);
        var inTwo = Chance(0.4);
        var ending = Chance(0.5) ? "\n" : "\r\n";
        IsAmbiguous =
            !day.StartsWith("yyyy", StringComparison.Ordinal)
            && !day.Contains("MMM", StringComparison.Ordinal)
            && _tests.All(test => test.Tested.Day <= 12);
        var columns =
            new List<(string Header, string Unit, Func<DeliveredData.Test, string> Text)>();
        if (hasTubes)
        {
            columns.Add((words.Specimen, "", test => test.Code));
            columns.Add((words.Tube, "", test => test.Tube.ToString()));
        }
        else
        {
            columns.Add((words.Specimen, "", test => $"{test.Code}{sign}{test.Tube}"));
        }

        if (Chance(0.7))
        {
            columns.Add((words.Test, "", _ => analyte));
        }

        columns.Add(
            (
                unitPlace == 1 ? $"{words.Result} ({unit})" : words.Result,
                unitPlace == 2 ? unit : "",
                test => test.Result.Replace('.', decimalSign)
            )
        );
        if (unitPlace == 0)
        {
            columns.Add((words.Unit, "", _ => unit));
        }

        string Time(DeliveredData.Test test, string form) =>
            test.Tested.ToString(form, CultureInfo.InvariantCulture);
        if (inTwo)
        {
            columns.Add((words.Day, "", test => Time(test, day)));
            columns.Add((words.Clock, "", test => Time(test, clock)));
        }
        else
        {
            columns.Add((words.When, "", test => Time(test, $"{day} {clock}")));
        }

        if (hasOccasion)
        {
            var isPlain = Chance(0.5);
            columns.Add(
                (
                    words.Occasion,
                    "",
                    test =>
                        isPlain ? test.Occasion
                        : test.Occasion == "baseline" ? "0 h"
                        : test.Occasion.Replace(" ", "", StringComparison.Ordinal)
                )
            );
        }

        if (Chance(0.5))
        {
            columns.Add(
                (words.Name, "", test => test.Specimen % 2 == 0 ? "Mustermann, Erika" : "Doe, Jane")
            );
        }

        if (Chance(0.4))
        {
            columns.Add(("Bemerkung", "", _ => ""));
        }

        (string, string, Func<DeliveredData.Test, string>)[] ordered = [.. columns];
        if (Chance(0.6))
        {
            _random.Shuffle(ordered);
        }

        var preamble = _random.Next(6);
        var hasFooter = Chance(0.4);
        var text = new StringBuilder();
        for (var i = 0; i < preamble; i++)
        {
            text.Append(
                    new[]
                    {
                        "Export of an invented analyzer",
                        "Serial no. 0001",
                        "",
                        "Period: March",
                        "Temperature 37 °C",
                    }[i]
                )
                .Append(ending);
        }

        string Field(string value) =>
            value.Contains(delimiter, StringComparison.Ordinal)
            || value.Contains('"', StringComparison.Ordinal)
                ? $"\"{value}\""
                : value;
        string Line(IEnumerable<string> values) =>
            string.Join(delimiter, values.Select(Field)) + ending;
        text.Append(Line(ordered.Select(column => column.Item1)));
        if (unitPlace == 2)
        {
            text.Append(Line(ordered.Select(column => column.Item2)));
        }

        var hasBlocks = Chance(0.2);
        var hasTitles = Chance(0.5);
        var written = 0;
        foreach (var test in Chance(0.5) ? _tests.OrderBy(test => test.Tested).ToList() : _tests)
        {
            if (hasBlocks && written > 0 && written % 12 == 0)
            {
                text.Append(hasTitles ? $"{ending}Run {written / 12 + 1}{ending}" : "");
                text.Append(Line(ordered.Select(column => column.Item1)));
                text.Append(unitPlace == 2 ? Line(ordered.Select(column => column.Item2)) : "");
            }

            written++;
            text.Append(Line(ordered.Select(column => column.Item3(test))));
        }

        if (hasFooter)
        {
            text.Append(CultureInfo.InvariantCulture, $"{_tests.Count} rows exported{ending}");
        }

        Encoding encoding = _random.Next(5) switch
        {
            0 => new UTF8Encoding(true),
            1 => new UTF8Encoding(false),
            2 => new UnicodeEncoding(false, true),
            3 => new UnicodeEncoding(true, true),
            _ => CodePagesEncodingProvider.Instance.GetEncoding(1252)!,
        };
        Bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(text.ToString())];
        Description = $"{Name}, {encoding.WebName}, delimiter {delimiter}\n{text}";
    }
}
