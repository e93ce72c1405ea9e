using System.Text.RegularExpressions;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Conduct;

namespace StabilityStudy.Reporting.Tests.Report;

public sealed partial class DispositionFlowTests
{
    public static TheoryData<string> Names => OddStudies.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void At_every_time_point_the_numbers_add_up_to_those_received(string name)
    {
        var analysis = OddStudies.All[name];
        foreach (var sequence in analysis.Sequences)
        {
            var flow = DispositionFlow.Of(analysis, sequence);
            var received = Number(flow.Steps[^1]);

            Assert.Equal(sequence.Cells.Length, flow.Branches.Length);
            Assert.All(
                flow.Branches,
                branch =>
                    Assert.Equal(
                        received,
                        Number(branch.Box[branch.Box.IndexOf(':', StringComparison.Ordinal)..])
                            + branch
                                .LeftOut.Split("; ", StringSplitOptions.RemoveEmptyEntries)
                                .Sum(Number)
                    )
            );
            Assert.All(
                flow.Branches,
                branch =>
                    Assert.Contains(branch.Box, flow.AlternativeText, StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void What_is_left_out_is_said_in_the_words_of_the_list_below()
    {
        var analysis = OddStudies.All["a group without an eligible pair"];
        var flow = DispositionFlow.Of(
            analysis,
            analysis.Sequences.Single(sequence => sequence.Group == "ufh")
        );

        Assert.All(
            flow.Branches,
            branch => Assert.Equal("30 specimen or tube not eligible", branch.LeftOut)
        );
        Assert.All(
            flow.Branches,
            branch => Assert.EndsWith(": 0 compared", branch.Box, StringComparison.Ordinal)
        );
    }

    private static int Number(string text) =>
        int.Parse(Digits().Match(text).Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("[0-9]+", RegexOptions.NonBacktracking)]
    private static partial Regex Digits();
}
