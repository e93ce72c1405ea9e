using System.CommandLine;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Cli.Commands;

/// <summary>On what labels are printed: a sheet by its measures, or single labels.</summary>
internal sealed class LabelOptions
{
    private const string SheetName = "--label-sheet";
    private const string SingleName = "--label-size";
    private const string FirstName = "--first-label";
    private const string Example =
        "columns=4 rows=12 width=45.7 height=21.2 left=9.8 top=21.3 gap-across=2.5 gap-down=0";

    private static readonly string[] s_measures =
    [
        "columns",
        "rows",
        "width",
        "height",
        "left",
        "top",
        "gap-across",
        "gap-down",
    ];

    private readonly Option<string?> _sheet = new(SheetName)
    {
        Description =
            $"Measures of a label sheet in mm: \"{Example}\". Left and top are the margins before the first label. Without it: 4 x 12 labels of 45.7 x 21.2 mm in the middle of the paper.",
        HelpName = "MEASURES",
    };

    private readonly Option<string?> _single = new(SingleName)
    {
        Description = "Single labels of this size in mm, one a page, such as 45x21.",
        HelpName = "SIZE",
    };

    private readonly Option<int?> _first = new(FirstName)
    {
        Description =
            "The first label of the sheet that is still free, counted line by line from 1.",
        HelpName = "NUMBER",
    };

    /// <summary>Adds the options to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_sheet);
        command.Add(_single);
        command.Add(_first);
    }

    /// <summary>The stock; null when none of the options is given.</summary>
    /// <exception cref="UsageException">A measure is missing, twice, unknown or no number.</exception>
    public LabelStock? Of(ParseResult parsed, PaperSize paper)
    {
        var (sheet, single, first) = (
            parsed.GetValue(_sheet),
            parsed.GetValue(_single),
            parsed.GetValue(_first)
        );
        if (single is not null && (sheet is not null || first is not null))
        {
            throw new UsageException(
                $"{SingleName} does not go with {(sheet is null ? FirstName : SheetName)}: single labels lie on no sheet."
            );
        }

        if (single is not null)
        {
            return
                single.Split('x') is [var width, var height]
                && Number(width) is { } wide
                && Number(height) is { } high
                ? LabelStock.OneByOne(wide, high)
                : throw new UsageException(
                    $"{SingleName}: \"{single}\" is no size. Write width and height in mm, like 45x21."
                );
        }

        return sheet is null && first is null
            ? null
            : (sheet is null ? LabelStock.Usual(paper) : Sheet(sheet)) with
            {
                FirstLabel = first ?? 1,
            };
    }

    private static LabelStock Sheet(string text)
    {
        var measures = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var part in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (
                part.Split('=') is not [var name, var value]
                || !s_measures.Contains(name)
                || Number(value) is not { } number
                || !measures.TryAdd(name, number)
            )
            {
                throw new UsageException(
                    $"{SheetName}: \"{part}\" is no measure, or stands there twice. Write all of them, in mm: \"{Example}\"."
                );
            }
        }

        if (
            s_measures.Where(name => !measures.ContainsKey(name)).ToArray() is
            { Length: > 0 } missing
        )
        {
            throw new UsageException(
                $"{SheetName}: {string.Join(", ", missing)} missing. Write all of them, in mm: \"{Example}\"."
            );
        }

        return new LabelStock(
            Whole("columns"),
            Whole("rows"),
            measures["width"],
            measures["height"],
            measures["left"],
            measures["top"],
            measures["gap-across"],
            measures["gap-down"],
            1
        );

        int Whole(string name) =>
            measures[name] is var number && number == Math.Floor(number)
                ? (int)number
                : throw new UsageException($"{SheetName}: {name} is a whole number.");
    }

    private static double? Number(string text) =>
        decimal.TryParse(
            text,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var number
        )
        && number < 1000
            ? (double)number
            : null;
}
