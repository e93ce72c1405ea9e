using System.CommandLine;
using StabilityStudy.Core.Planning;

namespace StabilityStudy.Cli.Commands;

/// <summary>The options of plan that say what is supposed, and how it is shown.</summary>
internal sealed class PlanOptions
{
    private const decimal LeastMilliliters = 0.5m;
    private const decimal MostMilliliters = 10;
    private const int MostDays = 366;

    private readonly Option<string?> _analyte = new("--analyte")
    {
        Description = "Only this analyte, by its id in protocol.toml.",
        HelpName = "ID",
    };

    private readonly Option<string?> _group = new("--group")
    {
        Description = "Only this patient group, by its id.",
        HelpName = "ID",
    };

    private readonly Option<string?> _days = new("--days")
    {
        Description = "Collection days, in place of planned_days of the protocol.",
        HelpName = "N",
    };

    private readonly Option<string?> _pilot = new("--pilot")
    {
        Description =
            "CSV of pairs that you have already: columns baseline and delayed, and if you like analyte, group and time_point. From five pairs on their spread is supposed instead of the stated SD; their mean change is not.",
        HelpName = "FILE",
    };

    private readonly Option<bool> _joint = new("--joint")
    {
        Description = "Also the chance of each time together with every earlier one.",
    };

    private readonly Option<string?> _studies = new("--studies")
    {
        Description =
            "Most simulated studies for each chance, from 1 to 100,000; 600, when not given, leave 4 points either way, 2400 leave 2.",
        HelpName = "N",
    };

    private readonly Option<string?> _seed = new("--seed")
    {
        Description = "Seed of the simulation; the same gives the same figures.",
        HelpName = "N",
    };

    private readonly Option<string?> _milliliters = new("--tube-ml")
    {
        Description = "Milliliters of blood that a tube takes, from 0.5 to 10; 2.7 when not given.",
        HelpName = "ML",
    };

    private readonly Option<bool> _paragraph = new("--paragraph")
    {
        Description = "Only a paragraph on the number of specimens, to paste into a protocol.",
    };

    private readonly Option<string?> _figure = new("--figure")
    {
        Description =
            "Also draw the chances over the times as SVG; with several analytes, groups or storages a file each, named after FILE.",
        HelpName = "FILE",
    };

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All =>
        [
            _analyte,
            _group,
            _days,
            _pilot,
            _joint,
            _studies,
            _seed,
            _milliliters,
            _paragraph,
            _figure,
        ];

    /// <summary>The first of them that was given; null where none was.</summary>
    public string? FirstGiven(ParseResult parsed) =>
        All.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false })?.Name;

    /// <summary>The pilot file; null without one.</summary>
    public string? Pilot(ParseResult parsed) => parsed.GetValue(_pilot);

    /// <summary>Whether only the paragraph is asked for.</summary>
    public bool OnlyParagraph(ParseResult parsed) => parsed.GetValue(_paragraph);

    /// <summary>Where the figure goes; null for none.</summary>
    /// <exception cref="UsageException">It is no name of an SVG file.</exception>
    public string? Figure(ParseResult parsed)
    {
        var path = parsed.GetValue(_figure);
        return
            path is null
            || string.Equals(Path.GetExtension(path), ".svg", StringComparison.OrdinalIgnoreCase)
            ? path
            : throw new UsageException(
                $"The figure is an SVG. Name it like {Path.ChangeExtension(path, ".svg")}."
            );
    }

    /// <summary>What is asked.</summary>
    /// <exception cref="UsageException">A number is none, or outside its range.</exception>
    public PlanRequest Request(ParseResult parsed) =>
        new(
            Whole(parsed, _studies, 1, PlanRequest.MostStudies) ?? PlanRequest.UsualStudies,
            Seed(parsed)
        )
        {
            Analyte = parsed.GetValue(_analyte),
            Group = parsed.GetValue(_group),
            Days = Whole(parsed, _days, 1, MostDays),
            Joint = parsed.GetValue(_joint),
            MillilitersOfTube = Milliliters(parsed),
            Detail = true,
        };

    private static int? Whole(ParseResult parsed, Option<string?> option, int least, int most) =>
        parsed.GetValue(option) is not { } text ? null
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number >= least
        && number <= most
            ? number
        : throw new UsageException(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{option.Name} needs a whole number from {least} to {most:N0}."
            )
        );

    private ulong Seed(ParseResult parsed) =>
        parsed.GetValue(_seed) is not { } text ? PlanRequest.UsualSeed
        : ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var seed) ? seed
        : throw new UsageException("--seed needs a whole number that is not below zero.");

    private decimal Milliliters(ParseResult parsed) =>
        parsed.GetValue(_milliliters) is not { } text ? PlanRequest.UsualMilliliters
        : decimal.TryParse(
            text,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var number
        ) && number is >= LeastMilliliters and <= MostMilliliters
            ? number
        : throw new UsageException("--tube-ml needs a number from 0.5 to 10, such as 2.7.");
}
