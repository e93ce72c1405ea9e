using System.Globalization;
using System.Text;
using StabilityStudy.Files.Intake;
using static StabilityStudy.Files.Tests.OwnTables.WorkbookBytes;

namespace StabilityStudy.Files.Tests.OwnTables.Shapes;

/// <summary>How a system writes a table into a file.</summary>
/// <param name="Name">The dialect in words.</param>
/// <param name="End">How the name of the file ends.</param>
/// <param name="Keys">What study.toml states of it.</param>
/// <param name="Write">Writes the lines.</param>
internal sealed record Dialect(
    string Name,
    string End,
    string Keys,
    Func<ImmutableArray<object[]>, byte[]> Write
)
{
    private static readonly Encoding s_windows = CodePagesEncodingProvider.Instance.GetEncoding(
        1252
    )!;

    public static ImmutableArray<Dialect> All { get; } =
    [
        Text("commas, ISO times", ',', '.', "yyyy-MM-dd'T'HH:mm", new UTF8Encoding(false), ""),
        Text(
            "semicolons, decimal commas, Windows-1252",
            ';',
            ',',
            "dd.MM.yyyy HH:mm",
            s_windows,
            "delimiter = \";\"\ndecimal = \",\"\nencoding = \"windows-1252\"\ndate_format = \"dd.MM.yyyy HH:mm\"\n"
        ),
        Text(
            "tabs, twelve hours, years of two digits, a byte order mark",
            '\t',
            '.',
            "M/d/yy h:mm tt",
            new UTF8Encoding(true),
            "delimiter = \"tab\"\ndate_format = \"M/d/yy h:mm tt\"\ncentury = 2000\n"
        ),
        Text(
            "vertical bars, UTF-16",
            '|',
            ',',
            "dd/MM/yyyy HH:mm:ss",
            new UnicodeEncoding(false, true),
            "delimiter = \"|\"\ndecimal = \",\"\nencoding = \"utf-16\"\ndate_format = \"dd/MM/yyyy HH:mm:ss\"\n"
        ),
        Text(
            "commas between fields and in numbers",
            ',',
            ',',
            "yyyy/MM/dd HH:mm",
            new UTF8Encoding(false),
            "decimal = \",\"\ndate_format = \"yyyy/MM/dd HH:mm\"\n",
            "\r\n"
        ),
        Book(from1904: false, asText: false),
        Book(from1904: true, asText: false),
        Book(from1904: false, asText: true),
    ];

    /// <summary>The study with its results, or pairs, in the shape and dialect.</summary>
    public StudyBytes Of(Shape shape, ShapedData data)
    {
        var name = "export" + End;
        var plain = data.Plain;
        var files = new StudyBytes(
            (shape.IsOfPairs ? plain.Files.Remove("specimens.csv") : plain.Files).Remove(
                "results.csv"
            )
        ).With(name, Write(shape.Lines));
        var more = shape.More.IsEmpty ? "" : $"more_files = [\"more{End}\"]\n";
        return (shape.More.IsEmpty ? files : files.With("more" + End, Write(shape.More))).With(
            "study.toml",
            GoodStudy.Utf8(
                DeliveredData.Facts(
                    $"\n[read.{shape.Section}]\nfile = \"{name}\"\n{more}{Keys}{shape.Keys}{shape.Settings}"
                )
            )
        );
    }

    private static Dialect Text(
        string name,
        char delimiter,
        char decimalSign,
        string time,
        Encoding encoding,
        string keys,
        string ending = "\n"
    ) =>
        new(
            name,
            ".csv",
            keys,
            lines =>
            {
                var width = lines.Max(line => line.Length);
                var text = string.Concat(
                    lines.Select(line =>
                        string.Join(
                            delimiter,
                            line.Select(Field)
                                .Concat(
                                    line.Length > 1
                                        ? Enumerable.Repeat("", width - line.Length)
                                        : []
                                )
                        ) + ending
                    )
                );
                return [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];

                string Field(object field)
                {
                    var written = field switch
                    {
                        Shape.Result result => result.Text.Replace('.', decimalSign),
                        DateTime at => at.ToString(time, CultureInfo.InvariantCulture),
                        _ => (string)field,
                    };
                    return written.Contains(delimiter, StringComparison.Ordinal)
                        ? $"\"{written}\""
                        : written;
                }
            }
        );

    private static Dialect Book(bool from1904, bool asText) =>
        new(
            $"a workbook{(from1904 ? " with days from 1904" : "")}{(asText ? " with numbers as text" : "")}",
            ".xlsx",
            "",
            lines =>
                new WorkbookBytes { From1904 = from1904 }
                    .Sheet(
                        "Export",
                        lines.Select(line => new Row([
                            .. line.Select(field =>
                                field switch
                                {
                                    Shape.Result { Text: [>= '0' and <= '9', ..] } result
                                        when !asText => Cell.Number(result.Text, "0.0"),
                                    Shape.Result result => Cell.Text(result.Text),
                                    DateTime at => Cell.Time(at),
                                    _ => Cell.Text((string)field),
                                }
                            ),
                        ]))
                    )
                    .ToArray()
        );

    /// <inheritdoc/>
    public override string ToString() => Name;
}
