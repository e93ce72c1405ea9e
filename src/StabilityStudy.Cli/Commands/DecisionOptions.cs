using System.CommandLine;
using System.CommandLine.Parsing;
using StabilityStudy.Cli.Console;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>The options of sign that state a decision.</summary>
internal sealed class DecisionOptions
{
    private const string Approve = "approve";
    private const string Decline = "decline";
    private const string Row = "ROW=TEXT";

    private readonly Option<string?> _decision = new Option<string?>("--decision")
    {
        Description =
            "approve or decline; for the role that decides. An approval puts every supported window into force, but for what --window says.",
        HelpName = "DECISION",
    }.AcceptOnlyFromAmong(Approve, Decline);

    private readonly Option<string[]> _window = new("--window")
    {
        Description =
            "Window of a row when it is shorter than supported, or none to leave today's rule: aPTT/ufh=\"6 h\". Once a row.",
        HelpName = Row,
    };

    private readonly Option<string[]> _interim = new("--interim")
    {
        Description =
            "Rule of a row without a window, shorter than today's, until more is known: aPTT/ufh=\"30 min\".",
        HelpName = Row,
    };

    private readonly Option<string[]> _condition = new("--condition")
    {
        Description =
            "Condition of every approved window, or of one row (ROW=TEXT). May be given more than once.",
        HelpName = "TEXT",
    };

    private readonly Option<string?> _reason = new("--reason")
    {
        Description = "Why it is declined, or why a window is shorter than supported.",
        HelpName = "TEXT",
    };

    private readonly Option<string?> _effective = new("--effective")
    {
        Description = "First day in force, YYYY-MM-DD; from the signature on otherwise.",
        HelpName = "DAY",
    };

    private readonly Option<string?> _review = new("--review")
    {
        Description =
            "Day by which the windows are to be reviewed, YYYY-MM-DD; otherwise what the protocol's review_after gives.",
        HelpName = "DAY",
    };

    private readonly Option<string?> _again = new("--again")
    {
        Description = "Why you decide, where a decision on this study was signed before.",
        HelpName = "TEXT",
    };

    /// <summary>The options, in the order in which they are shown.</summary>
    public IEnumerable<Option> All =>
        [_decision, _window, _interim, _condition, _reason, _effective, _review, _again];

    /// <summary>What they ask for; null without a decision.</summary>
    public DecisionRequest? Read(ParseResult parsed)
    {
        if (parsed.GetValue(_decision) is not { } word)
        {
            return
                All.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false })
                    is { } alone
                ? throw new UsageException($"{alone.Name} goes with --decision.")
                : null;
        }

        var conditions = (parsed.GetValue(_condition) ?? [])
            .Select(text => (Text: OneLine(text, _condition), Of: OfRow(text)))
            .ToImmutableArray();
        return new DecisionRequest(
            word == Approve,
            TextOption.OneLine(parsed.GetValue(_reason), _reason.Name)
        )
        {
            Windows = Rows(parsed, _window),
            Interim = Rows(parsed, _interim),
            Conditions = [.. conditions.Where(item => item.Of is null).Select(item => item.Text)],
            RowConditions = [.. conditions.Select(item => item.Of).OfType<RowText>()],
            Effective = Day(parsed, _effective),
            Review = Day(parsed, _review),
            Again = TextOption.OneLine(parsed.GetValue(_again), _again.Name),
        };
    }

    private static ImmutableArray<RowText> Rows(ParseResult parsed, Option<string[]> option) =>
        [
            .. (parsed.GetValue(option) ?? []).Select(text =>
                OfRow(OneLine(text, option))
                ?? throw new UsageException(
                    $"{option.Name} is given as ROW=WINDOW, for example aPTT/ufh=\"6 h\"; \"{text}\" is not."
                )
            ),
        ];

    /// <summary>A row and what is said of it; null for a text about all rows. Only the name of a row has a slash and no space before an equals sign.</summary>
    private static RowText? OfRow(string text)
    {
        var at = text.IndexOf('=', StringComparison.Ordinal);
        return
            at > 0
            && text[..at].Contains('/', StringComparison.Ordinal)
            && !text[..at].Contains(' ', StringComparison.Ordinal)
            ? new RowText(text[..at], text[(at + 1)..].Trim())
            : null;
    }

    private static string OneLine(string text, Option option) =>
        TextOption.OneLine(text, option.Name) ?? "";

    private static DateOnly? Day(ParseResult parsed, Option<string?> option) =>
        parsed.GetValue(option) is { } text ? DayText.Of(text, option.Name) : null;
}
