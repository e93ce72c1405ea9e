using System.Net;
using System.Text.RegularExpressions;

namespace StabilityStudy.EndToEnd.Tests;

/// <summary>A character or word on a page as a reader shows it.</summary>
/// <param name="Page">The page, from 1; 0 for a reader that tells no places.</param>
/// <param name="X">How far from the left edge, in points.</param>
/// <param name="Y">How far from the upper edge, in points.</param>
/// <param name="Text">What is shown there.</param>
internal readonly record struct ShownText(int Page, double X, double Y, string Text);

/// <summary>A program of others that reads PDF, and the text that it shows of a file.</summary>
/// <param name="Name">Name of the reader.</param>
/// <param name="ShowsStamps">Whether it gives the text of signatures' stamps, which are annotations.</param>
/// <param name="Read">Writes what it shows of some files up to a page, each into a file of its own.</param>
/// <param name="Pattern">Finds a text in that: groups page, x, y with y2 for the lower edge of a box, and text.</param>
internal sealed partial record OutsideReader(
    string Name,
    bool ShowsStamps,
    Func<IReadOnlyList<(string Pdf, string Output)>, string, Task> Read,
    Regex Pattern
)
{
    private const string Java = "/usr/share/java";
    private const string Pdfium = "PDFIUM";

    /// <summary>Whether it takes long to start.</summary>
    public bool IsSlow { get; init; }

    public static IReadOnlyList<OutsideReader> All { get; } =
    [
        new(
            "poppler",
            true,
            (files, last) =>
                Each(files, file => ("pdftotext", ["-bbox", "-l", last, file.Pdf, file.Output])),
            PopplerWord()
        ),
        new(
            "mupdf",
            true,
            (files, last) =>
                Each(
                    files,
                    file =>
                        (
                            "mutool",
                            ["draw", "-q", "-F", "stext", "-o", file.Output, file.Pdf, "1-" + last]
                        )
                ),
            PlacedCharacter()
        ),
        new(
            "ghostscript",
            true,
            (files, last) =>
                Each(
                    files,
                    file =>
                        (
                            "gs",
                            [
                                "-q",
                                "-dNOPAUSE",
                                "-dBATCH",
                                "-dSAFER",
                                "-sDEVICE=txtwrite",
                                "-dTextFormat=0",
                                "-dLastPage=" + last,
                                "-sOutputFile=" + file.Output,
                                file.Pdf,
                            ]
                        )
                ),
            BoxedCharacter()
        )
        {
            IsSlow = true,
        },
        new("pdfbox", false, WithPdfBox, Line()) { IsSlow = true },
        new("pdfium", true, WithPdfium, PlacedCharacter()),
    ];

    /// <summary>What the reader shows, in no order: of a file that it cannot read, nothing.</summary>
    public IEnumerable<ShownText> Shown(string output)
    {
        var page = 0;
        foreach (Match match in Pattern.Matches(output))
        {
            if (match.Groups["page"].Success)
            {
                page++;
                continue;
            }

            var text = WebUtility.HtmlDecode(match.Groups["text"].Value).Trim();
            if (text.Length > 0)
            {
                yield return new(
                    page,
                    Middle(match.Groups["x"]),
                    Middle(match.Groups["y"], match.Groups["y2"]),
                    text
                );
            }
        }
    }

    private static double Middle(params Group[] groups) =>
        Math.Round(
            groups
                .Where(group => group.Success)
                .Select(group => double.Parse(group.Value, CultureInfo.InvariantCulture))
                .DefaultIfEmpty()
                .Average(),
            1
        );

    // A reader that refuses a file says so by its exit code, and shows nothing.
    private static async Task Each(
        IReadOnlyList<(string Pdf, string Output)> files,
        Func<(string Pdf, string Output), (string Tool, string[] Arguments)> call
    )
    {
        foreach (var file in files)
        {
            var (tool, arguments) = call(file);
            await OutsideTool.Run(tool, arguments);
        }
    }

    private static Task WithPdfBox(IReadOnlyList<(string Pdf, string Output)> files, string last)
    {
        string[] path =
        [
            .. new[] { "pdfbox2-tools", "pdfbox2", "fontbox2", "commons-logging" }.Select(jar =>
                $"{Java}/{jar}.jar"
            ),
        ];
        Assert.All(path, OutsideTool.Require);
        return Each(
            files,
            file =>
                (
                    "java",
                    [
                        // A run is too short for compilation and a second thread to pay.
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        string.Join(':', path),
                        "org.apache.pdfbox.tools.ExtractText",
                        "-encoding",
                        "UTF-8",
                        "-endPage",
                        last,
                        file.Pdf,
                        file.Output,
                    ]
                )
        );
    }

    private static async Task WithPdfium(
        IReadOnlyList<(string Pdf, string Output)> files,
        string last
    )
    {
        var module = Environment.GetEnvironmentVariable(Pdfium);
        OutsideTool.Require(
            module is null
                ? $"pdfium: set {Pdfium} to the folder of its module for node"
                : Path.Combine(module, "dist", "pdfium.wasm")
        );
        var answer = await OutsideTool.Run(
            "node",
            [
                Path.Combine(AppContext.BaseDirectory, "pdfium-text.mjs"),
                module!,
                last,
                .. files.SelectMany(file => new[] { file.Pdf, file.Output }),
            ]
        );
        Assert.True(answer.ExitCode == 0, answer.Error);
    }

    [GeneratedRegex(
        """(?<page><page )|<word xMin="(?<x>[^"]+)" yMin="(?<y>[^"]+)" xMax="[^"]+" yMax="(?<y2>[^"]+)">(?<text>[^<]*)<""",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking
    )]
    private static partial Regex PopplerWord();

    [GeneratedRegex(
        """(?<page><page)|<char [^>]*?x="(?<x>[^"]+)" y="(?<y>[^"]+)"[^>]*? c="(?<text>[^"]*)"/>""",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking
    )]
    private static partial Regex PlacedCharacter();

    [GeneratedRegex(
        """(?<page><page>)|<char bbox="(?<x>\S+) (?<y>\S+) [^"]*" c="(?<text>[^"]*)"/>""",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking
    )]
    private static partial Regex BoxedCharacter();

    [GeneratedRegex(
        "(?<text>[^\n]+)\n",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking
    )]
    private static partial Regex Line();
}
