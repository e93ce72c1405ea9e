using System.CommandLine;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Cli.Commands;

/// <summary>The paper of a document.</summary>
internal static class PaperOption
{
    private const string A4 = "a4";
    private const string Letter = "letter";

    public static Option<string> Create() =>
        new Option<string>("--paper")
        {
            Description = "a4 or letter.",
            DefaultValueFactory = _ => A4,
            HelpName = "SIZE",
        }.AcceptOnlyFromAmong(A4, Letter);

    public static PaperSize Of(ParseResult parsed, Option<string> option) =>
        parsed.GetValue(option) == Letter ? PaperSize.Letter : PaperSize.A4;
}
