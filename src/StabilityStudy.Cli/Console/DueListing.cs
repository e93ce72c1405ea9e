using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>The tubes that are overdue, and those that are to be tested next.</summary>
internal sealed class DueListing(
    Terminal terminal,
    CollectionInventory inventory,
    StudyProtocol protocol,
    StudyTime time,
    bool all
)
{
    private const int MostOverdue = 5;
    private const int MostNext = 10;

    /// <summary>Whether a test is still to be made, and its time touches the day of the check.</summary>
    public static bool IsOfToday(PlannedTest test, StudyTime time) =>
        test.Standing == TestStanding.DueNow
        || (
            test.Standing == TestStanding.DueLater
            && (time.IsToday(test.Earliest) || time.IsToday(test.Latest))
        );

    public void Write()
    {
        var overdue = inventory
            .Tests.Where(test => test.Standing is TestStanding.Overdue or TestStanding.InQuestion)
            .ToImmutableArray();
        var next = inventory
            .Tests.Where(test => test.Standing is TestStanding.DueNow or TestStanding.DueLater)
            .ToImmutableArray();
        if (overdue.IsEmpty && next.IsEmpty)
        {
            return;
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine("Now and next");
        Tests(overdue, MostOverdue, "overdue");
        var today = next.Where(test => IsOfToday(test, time)).ToImmutableArray();
        if (all || today.IsEmpty)
        {
            Tests(next, MostNext, "to come");
            return;
        }

        Tests(today, MostNext, "today");
        if (next.Length - today.Length is > 0 and var later)
        {
            WrappedText.Write(
                terminal,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  later: {later} {(later == 1 ? "tube" : "tubes")}, the first at {time.Whole(next.First(test => !IsOfToday(test, time)).Earliest)}"
                )
            );
        }
    }

    private void Tests(ImmutableArray<PlannedTest> tests, int most, string what)
    {
        var shown = all ? tests : [.. tests.Take(most)];
        string[][] rows = [.. shown.Select(Columns)];
        var widths =
            rows.Length == 0
                ? []
                : rows[0].Select((_, i) => rows.Max(row => TextLines.Length(row[i]))).ToArray();
        for (var i = 0; i < rows.Length; i++)
        {
            var columns = rows[i]
                .Select((text, column) => TextLines.Padded(text, widths[column], atRight: true))
                .Where(text => text.Length > 0);
            WrappedText.Write(
                terminal,
                $"  {string.Join("  ", columns)}  {Rest(shown[i])}".TrimEnd(),
                "    "
            );
        }

        if (shown.Length < tests.Length)
        {
            terminal.Out.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  and {tests.Length - shown.Length} more {what}: --all"
                )
            );
        }
    }

    /// <summary>When, which specimen, which time; where there are several, in which storage and for which analytes.</summary>
    private string[] Columns(PlannedTest test) =>
        [
            test.Standing switch
            {
                TestStanding.Overdue => "overdue",
                TestStanding.InQuestion => "when?",
                TestStanding.DueNow => "now",
                _ => time.IsToday(test.Earliest) && time.IsToday(test.Latest)
                    ? $"{time.Short(test.Earliest)}-{time.Short(test.Latest)}"
                    : time.Whole(test.Earliest),
            },
            test.Specimen,
            test.Occasion.ToString(),
            protocol.Storages.Length > 1 ? test.Storage : "",
            protocol.Analytes.Length > 1 && test.Analytes.Length < protocol.Analytes.Length
                ? string.Join(", ", test.Analytes)
                : "",
        ];

    private string Rest(PlannedTest test) =>
        test.Standing switch
        {
            TestStanding.Overdue => $"last time was {time.Short(test.Latest)}",
            TestStanding.InQuestion => "time of collection in question, see below",
            TestStanding.DueNow when Spin(test) is { Length: > 0 } spin =>
                $"until {time.Short(test.Latest)}, {spin}",
            TestStanding.DueNow => $"until {time.Short(test.Latest)}",
            _ => Spin(test),
        };

    private string Spin(PlannedTest test) =>
        test.SpinBy is { } by ? $"spin by {time.Short(by)}"
        : test.SpinFrom is { } from ? $"spin from {time.Short(from)}"
        : "";
}
