using System.CommandLine;
using StabilityStudy.Cli.Console;
using StabilityStudy.Core.Notices;
using StabilityStudy.Pipeline.Notices;

namespace StabilityStudy.Cli.Commands;

/// <summary>keep: the notice that approved windows stay in force, after a review or under a new director.</summary>
internal static class KeepCommand
{
    public static Command Create(Terminal terminal)
    {
        var reports = NoticeRun.Reports();
        var by = NoticeRun.By();
        var reason = new Option<string>("--reason")
        {
            Description = "What was looked at, and why the windows stay.",
            HelpName = "TEXT",
            Required = true,
        };
        var review = new Option<string?>("--review")
        {
            Description =
                "Day by which the windows are to be reviewed next, YYYY-MM-DD; otherwise what the protocol's review_after gives, and with --new-director as it was.",
            HelpName = "DAY",
        };
        var director = new Option<bool>("--new-director")
        {
            Description = "A new director adopts windows that another one approved.",
        };
        var output = NoticeRun.Output();
        var paper = PaperOption.Create();
        var command = new Command(
            "keep",
            "Write the notice that the windows of signed reports were reviewed and stay unchanged, or that a new director adopts them. It counts once it is signed, from that day on, and where the register of signed reports holds it.\n\nExample:\n  stability-study keep register/WB-RT-12-3f09c2d4.pdf --by \"Medical Director One\" --review 2028-03-31 --reason \"controls and complaints of two years, no change of instrument or reagent\""
        )
        {
            reports,
            by,
            reason,
            review,
            director,
            output,
            paper,
        };
        command.SetAction(parsed =>
        {
            var isNew = parsed.GetValue(director);
            var next = parsed.GetValue(review);
            return (int)
                NoticeRun.About(
                    terminal,
                    parsed.GetRequiredValue(reports),
                    new NoticeRequest(
                        isNew ? NoticeKind.Adopted : NoticeKind.Reviewed,
                        TextOption.OneLine(parsed.GetRequiredValue(by), by.Name)!,
                        TextOption.OneLine(parsed.GetRequiredValue(reason), reason.Name)!,
                        PaperOption.Of(parsed, paper)
                    )
                    {
                        Today = DateOnly.FromDateTime(terminal.Clock.GetLocalNow().DateTime),
                        Review = next is null ? null : DayText.Of(next, review.Name),
                    },
                    parsed.GetValue(output)
                );
        });
        return command;
    }
}
