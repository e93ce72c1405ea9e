using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Notices;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>withdraw: the notice that takes approved windows out of force.</summary>
internal static class WithdrawCommand
{
    private const string Nothing = "none";

    public static Command Create(Terminal terminal)
    {
        var notice = new NoticeOptions(
            "Why.",
            "A new director ends windows that another one approved. What was reported is then looked at again only with --look-back."
        );
        var from = new Option<string>("--from")
        {
            Description = "First day on which the windows are no longer in force, YYYY-MM-DD.",
            HelpName = "DAY",
            Required = true,
        };
        var window = new Option<string[]>("--window")
        {
            Description =
                "A window to take away, aPTT/ufh, or what stays of it, aPTT/ufh=\"6 h\"; all that are longer than today's rules otherwise. May be given more than once.",
            HelpName = "ROW",
        };
        var lookBack = new Option<bool>("--look-back")
        {
            Description =
                "With --new-director: list the results to be looked at again, as every other withdrawal does.",
        };
        var command = notice.Command(
            "withdraw",
            "Write the notice that takes approved windows of signed reports out of force, with the results to look back at. It counts once it is signed, and where the register of signed reports holds it.\n\nExample:\n  stability-study withdraw register/WB-RT-12-3f09c2d4.pdf --by \"Medical Director One\" --from 2026-06-10 --reason \"a shift in external quality control\"",
            from,
            window,
            lookBack
        );
        command.SetAction(parsed =>
        {
            var isNew = parsed.GetValue(notice.NewDirector);
            return parsed.GetValue(lookBack) && !isNew
                ? throw new UsageException(
                    "--look-back goes with --new-director; every other withdrawal looks back."
                )
                : (int)
                    notice.Run(
                        terminal,
                        parsed,
                        isNew ? NoticeKind.EndedByNewDirector : NoticeKind.Withdrawn,
                        request =>
                            request with
                            {
                                From = DayText.Of(parsed.GetRequiredValue(from), from.Name),
                                LooksBack = !isNew || parsed.GetValue(lookBack),
                                Windows =
                                [
                                    .. (parsed.GetValue(window) ?? []).Select(text =>
                                        Row(TextOption.OneLine(text, window.Name)!)
                                    ),
                                ],
                            }
                    );
        });
        return command;
    }

    private static RowText Row(string text) =>
        text.IndexOf('=', StringComparison.Ordinal) is >= 0 and var at
            ? new RowText(text[..at], text[(at + 1)..].Trim())
            : new RowText(text, Nothing);
}
