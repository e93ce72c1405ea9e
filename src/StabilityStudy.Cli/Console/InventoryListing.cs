using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>How far a collection is, as text: the answer first, then each group, what is due, and the baselines so far.</summary>
internal sealed class InventoryListing(
    Terminal terminal,
    CollectionInventory inventory,
    StudyProtocol protocol,
    StudyTime time,
    bool all
)
{
    private const int WideEnough = 72;
    private const int LongestName = 26;
    private const int ShortestName = 20;

    public void Write(bool hasEnded)
    {
        WrappedText.Write(terminal, Answer(hasEnded));
        terminal.Out.WriteLine();
        WriteGroups();
        WriteUnusable();
        new DueListing(terminal, inventory, protocol, time, all).Write();
        WriteRanges();
        if (inventory.CollectedLater > 0)
        {
            terminal.Out.WriteLine();
            WrappedText.Write(
                terminal,
                $"! {Count(inventory.CollectedLater, "specimen")} collected after this moment: a date or a clock is wrong."
            );
        }
    }

    private string Answer(bool hasEnded)
    {
        var state =
            hasEnded ? "Ended early"
            : inventory.IsCollecting ? "Collecting"
            : "Collected: every planned specimen is there";
        var days =
            state == "Collecting"
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $", day {inventory.Days} of at least {inventory.PlannedDays}"
                )
                : "";
        var overdue = Standing(TestStanding.Overdue);
        var today = inventory.Tests.Count(test => DueListing.IsOfToday(test, time));
        return $"{state}{days}. {Tubes(overdue)} overdue, {Tubes(today, "due today")}. As of {time.Whole(time.AsOf)}.";
    }

    private static string Tubes(int count, string? what = null) =>
        (count, what) switch
        {
            (0, null) => "No tube is",
            (1, null) => "1 tube is",
            (_, null) => string.Create(CultureInfo.InvariantCulture, $"{count} tubes are"),
            (0, _) => "none is " + what,
            (1, _) => "1 is " + what,
            _ => string.Create(CultureInfo.InvariantCulture, $"{count} are {what}"),
        };

    private void WriteGroups()
    {
        var inQuestion = Standing(TestStanding.InQuestion) > 0;
        var isWide = terminal.Width >= WideEnough;
        int[] widths = [isWide ? 14 : 8, 6, 9, 6, 7];
        var width = Math.Min(
            isWide ? LongestName : ShortestName,
            inventory.Groups.Max(item => TextLines.Length(item.Name))
        );
        Row("", "specimens", isWide ? "tubes tested" : "tested", "due", "overdue", "lost", "when?");
        foreach (var item in inventory.Groups)
        {
            var lines = TextLines.WrapLine(item.Name, width);
            foreach (var line in lines[..^1])
            {
                terminal.Out.WriteLine(line);
            }

            Row(
                lines[^1],
                string.Create(CultureInfo.InvariantCulture, $"{item.Specimens} of {item.Planned}"),
                Number(item.Count(TestStanding.Tested)),
                Number(item.Count(TestStanding.DueNow) + item.Count(TestStanding.DueLater)),
                Number(item.Count(TestStanding.Overdue)),
                Number(item.Count(TestStanding.Lost)),
                Number(item.Count(TestStanding.InQuestion))
            );
        }

        void Row(string name, string specimens, params ReadOnlySpan<string> tubes)
        {
            var row = TextLines.Padded(name, width, atRight: true) + specimens.PadLeft(11);
            for (var i = 0; i < tubes.Length - (inQuestion ? 0 : 1); i++)
            {
                row += tubes[i].PadLeft(widths[i]);
            }

            terminal.Out.WriteLine(row.TrimEnd());
        }
    }

    private void WriteUnusable()
    {
        foreach (var item in inventory.Groups.Where(item => item.Unusable > 0))
        {
            WrappedText.Write(
                terminal,
                $"{item.Name}: {Count(item.Unusable, "specimen")} without a valid baseline; {(item.Unusable == 1 ? "another takes its place" : "others take their places")}."
            );
        }
    }

    private void WriteRanges()
    {
        var ranges = inventory
            .Ranges.Where(range =>
                range.Count > 0 && (range.Planned is not null || !range.Levels.IsEmpty)
            )
            .ToImmutableArray();
        if (ranges.IsEmpty)
        {
            return;
        }

        terminal.Out.WriteLine();
        foreach (var range in ranges)
        {
            WrappedText.Write(terminal, Words(range), "  ");
        }
    }

    private string Words(BaselineRange range)
    {
        var analyte = protocol.Analytes.Single(item => item.Id == range.Analyte);
        var name = inventory.Groups.Single(item => item.Group == range.Group).Name;
        var unit = analyte.ShownUnit.Length > 0 ? " " + analyte.ShownUnit : "";
        var planned = range.Planned is { } span
            ? string.Create(
                CultureInfo.InvariantCulture,
                $", planned {span.Lowest} to {span.Highest}"
            )
            : "";
        var few = range
            .Levels.SelectMany(level =>
                new[] { (Side: "below", Count: level.Below), (Side: "above", Count: level.Above) }
                    .Where(side => side.Count < level.Wanted)
                    .Select(side =>
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"; {side.Count} {side.Side} {level.Level}{unit}, {level.Wanted} wanted"
                        )
                    )
            )
            .ToImmutableArray();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Baselines so far, {range.Analyte}, {name}: {range.Lowest} to {range.Highest}{unit} ({range.Count}){planned}{string.Concat(few)}."
        );
    }

    private int Standing(TestStanding standing) =>
        inventory.Tests.Count(test => test.Standing == standing);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Count(int number, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");
}
