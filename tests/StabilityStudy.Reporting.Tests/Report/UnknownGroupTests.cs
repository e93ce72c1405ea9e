using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Report;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed class UnknownGroupTests
{
    [Fact]
    public void Of_several_groups_the_shortest_window_holds_and_of_one_nothing_is_said()
    {
        var analysis = OddStudies.All["two analytes in two groups"];
        var windows = UnknownGroup.Windows(analysis);

        Assert.Empty(UnknownGroup.Windows(OddStudies.All["40 pairs"]));
        Assert.Equal(
            analysis.Sequences.Select(sequence => sequence.Analyte).Distinct().Count(),
            windows.Length
        );
        Assert.All(
            analysis.Sequences.GroupBy(sequence => sequence.Analyte).Zip(windows),
            pair =>
            {
                var shortest = pair.First.Min(sequence =>
                    sequence.Window?.Time
                    ?? SequenceNames
                        .Of(analysis, sequence)
                        .Analyte.StandardWindowOf(sequence.Group)
                        .Time
                );
                Assert.StartsWith(
                    $"{pair.First.Key} at most {DurationText.FormatWindow(shortest)} (",
                    pair.Second,
                    StringComparison.Ordinal
                );
            }
        );
    }

    [Fact]
    public void Where_no_window_is_supported_todays_is_named_as_not_confirmed()
    {
        var analysis = OddStudies.All["two analytes in two groups"];
        var without = analysis with
        {
            Sequences = [.. analysis.Sequences.Select(sequence => sequence with { Window = null })],
        };

        Assert.All(
            UnknownGroup.Windows(without),
            text =>
                Assert.EndsWith(
                    "; today's window, which this study does not confirm)",
                    text,
                    StringComparison.Ordinal
                )
        );
    }
}
