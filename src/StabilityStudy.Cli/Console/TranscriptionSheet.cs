using System.Text;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>The sheet on which rows drawn at random are compared with the instrument's printout.</summary>
/// <param name="File">File of the results.</param>
/// <param name="Of">How many rows it had with a time of test, up to the moment.</param>
/// <param name="Seed">Seed by which the rows were drawn.</param>
/// <param name="Rows">The rows.</param>
internal sealed record TranscriptionSheet(
    string File,
    int Of,
    int Seed,
    ImmutableArray<ResultRow> Rows
)
{
    private const string Gap = "  ";
    private const int SecondLine = 6;
    private const int Result = 7;

    private static readonly string[] s_names =
    [
        "no",
        "line",
        "specimen",
        "tube",
        "analyte",
        "time_point",
        "tested_at",
        "result",
        "unit",
        "same",
    ];

    /// <summary>For a spreadsheet.</summary>
    public string ToCsv() =>
        string.Concat(
            Fields(time: row => row.ToString("yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture))
                .Prepend(s_names)
                .Select(fields => string.Join(',', fields.Select(Quoted)) + "\n")
        );

    /// <summary>For paper.</summary>
    public void Write(Terminal terminal, StudyTime time)
    {
        var output = terminal.Out;
        WrappedText.Write(
            terminal,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Transcription check: {Rows.Length} of {Of} rows of {File}, tested up to {time.Whole(time.AsOf)}, drawn with seed {Seed}."
            )
        );
        WrappedText.Write(
            terminal,
            "Compare each with the instrument's own printout: codes, time, result, unit. At most one row of a specimen and analyte is drawn, so the sheet shows no change."
        );
        output.WriteLine();
        string[][] rows =
        [
            OnPaper(s_names, "same"),
            .. Fields(time.Whole).Select(fields => OnPaper(fields, "[ ]")),
        ];
        var widths = rows[0].Select((_, i) => rows.Max(row => TextLines.Length(row[i]))).ToArray();
        var fits = widths.Sum() + (Gap.Length * (widths.Length - 1)) <= terminal.Width;
        foreach (var row in rows)
        {
            if (fits)
            {
                output.WriteLine(Joined(row, widths));
                continue;
            }

            // Time and result go onto a second line before anything is cut off.
            output.WriteLine(Joined(row[..SecondLine], widths[..SecondLine]));
            output.WriteLine(
                new string(' ', widths[0]) + Gap + Joined(row[SecondLine..], widths[SecondLine..])
            );
        }

        output.WriteLine();
        WrappedText.Write(
            terminal,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Should none of these rows differ, at most {TranscriptionSample.LargestSharePercent(Rows.Length):0} of 100 rows of such a file do (exact bound, 95 %). Should one differ, correct it, compare every row of that day or person, and say so in outcome."
            )
        );
        output.WriteLine();
        output.WriteLine("Compared by ____________________  on ______________  differing: ______");
        output.WriteLine();
        output.WriteLine("For study.toml, when it is done:");
        output.WriteLine("[[transcription_check]]");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed = {Seed}"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"rows = {Rows.Length}"));
        output.WriteLine("differences = # how many rows differed");
        output.WriteLine("by = \"\"        # code of the person");
        output.WriteLine("on = \"\"        # day, such as 2026-03-06");
    }

    private IEnumerable<string[]> Fields(Func<DateTimeOffset, string> time) =>
        Rows.Select(
            (row, i) =>
                (string[])
                    [
                        Number(i + 1),
                        Number(row.SourceRow),
                        row.Specimen,
                        row.Tube,
                        row.Analyte,
                        row.Occasion.ToString(),
                        row.RecordedAt is { } recordedAt ? time(recordedAt) : "",
                        row.Result.Text,
                        row.Unit,
                        "",
                    ]
        );

    /// <summary>The unit stands beside the result, and the place to tick last.</summary>
    private static string[] OnPaper(string[] fields, string last) =>
        [
            .. fields[..Result].Select(field => field.Replace('_', ' ')),
            fields[Result] == s_names[Result] ? s_names[Result]
            : fields[Result].Length == 0 ? "none"
            : $"{fields[Result]} {fields[Result + 1]}".TrimEnd(),
            last,
        ];

    private static string Joined(string[] row, int[] widths) =>
        string.Join(
                Gap,
                row.Select((field, i) => TextLines.Padded(field, widths[i], atRight: true))
            )
            .TrimEnd();

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Quoted(string field) =>
        field.AsSpan().ContainsAny(",\"\r\n")
            ? new StringBuilder("\"")
                .Append(field.Replace("\"", "\"\"", StringComparison.Ordinal))
                .Append('"')
                .ToString()
            : field;
}
