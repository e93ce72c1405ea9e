using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Notices;

namespace StabilityStudy.Cli.Commands;

/// <summary>keep: the notice that approved windows stay in force, after a review or under a new director.</summary>
internal static class KeepCommand
{
    public static Command Create(Terminal terminal)
    {
        var notice = new NoticeOptions(
            "What was looked at, and why the windows stay.",
            "A new director adopts windows that another one approved."
        );
        var review = new Option<string?>("--review")
        {
            Description =
                "Day by which the windows are to be reviewed next, YYYY-MM-DD; otherwise what the protocol's review_after gives, and with --new-director as it was.",
            HelpName = "DAY",
        };
        var command = notice.Command(
            "keep",
            "Write the notice that the windows of signed reports were reviewed and stay unchanged, or that a new director adopts them. It counts once it is signed, from that day on, and where the register of signed reports holds it.\n\nExample:\n  stability-study keep register/WB-RT-12-3f09c2d4.pdf --by \"Medical Director One\" --review 2028-03-31 --reason \"controls and complaints of two years, no change of instrument or reagent\"",
            review
        );
        command.SetAction(parsed =>
            (int)
                notice.Run(
                    terminal,
                    parsed,
                    parsed.GetValue(notice.NewDirector) ? NoticeKind.Adopted : NoticeKind.Reviewed,
                    request =>
                        request with
                        {
                            Review = parsed.GetValue(review) is { } next
                                ? DayText.Of(next, review.Name)
                                : null,
                        }
                )
        );
        return command;
    }
}
