using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Notices;
using StabilityStudy.Pipeline.Notices;

namespace StabilityStudy.Cli.Commands;

/// <summary>What every notice about reports is asked with: the reports, who decides and why, whether a new director does, paper and place.</summary>
/// <param name="why">What the reason tells.</param>
/// <param name="newDirector">What a new director does by it.</param>
internal sealed class NoticeOptions(string why, string newDirector)
{
    private readonly Argument<string[]> _reports = new("REPORT")
    {
        Description = "The signed reports, one or several.",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<string> _by = By();
    private readonly Option<string> _reason = Reason(why);
    private readonly Option<string> _paper = PaperOption.Create();

    private readonly Option<string?> _output = new("--output", "-o")
    {
        Description = "Where the notice goes; beside the first report otherwise.",
        HelpName = "FILE",
    };

    /// <summary>Whether a new director decides on the windows of another.</summary>
    public Option<bool> NewDirector { get; } = new("--new-director") { Description = newDirector };

    /// <summary>The person who decides and signs.</summary>
    public static Option<string> By() =>
        new("--by")
        {
            Description =
                "Printed name of the person who decides; only who has that name can sign the notice.",
            HelpName = "NAME",
            Required = true,
        };

    /// <summary>Why.</summary>
    public static Option<string> Reason(string why) =>
        new("--reason")
        {
            Description = why,
            HelpName = "TEXT",
            Required = true,
        };

    /// <summary>A command with these options around its own.</summary>
    public Command Command(string name, string description, params Option[] own)
    {
        var command = new Command(name, description) { _reports, _by };
        foreach (var option in (Option[])[.. own, _reason, NewDirector, _output, _paper])
        {
            command.Add(option);
        }

        return command;
    }

    /// <summary>Makes the notice.</summary>
    public ExitCode Run(
        Terminal terminal,
        ParseResult parsed,
        NoticeKind kind,
        Func<NoticeRequest, NoticeRequest> complete
    ) =>
        NoticeRun.About(
            terminal,
            parsed.GetRequiredValue(_reports),
            complete(
                new NoticeRequest(
                    kind,
                    TextOption.OneLine(parsed.GetRequiredValue(_by), _by.Name)!,
                    TextOption.OneLine(parsed.GetRequiredValue(_reason), _reason.Name)!,
                    PaperOption.Of(parsed, _paper)
                )
                {
                    Today = DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime),
                }
            ),
            parsed.GetValue(_output)
        );
}
