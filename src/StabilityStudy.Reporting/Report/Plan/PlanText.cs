using StabilityStudy.Core.Planning;
using StabilityStudy.Reporting.Html;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Report.Plan;

/// <summary>A plan as it is shown before there are data: text for the terminal, a paragraph for the protocol, figures.</summary>
public static class PlanText
{
    /// <summary>The plan as plain text: the answer first, then what it takes, the chances, what costs them and what would raise them.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="width">Most characters in a line.</param>
    public static string Draw(StudyPlan plan, int width)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return string.Concat(
            Blocks(plan)
                .Select(block => TextBlocks.Write(block, width))
                .Where(lines => !lines.IsEmpty)
                .Select(
                    (lines, i) =>
                        (i > 0 ? "\n" : "")
                        + string.Concat(lines.Select(line => line.TrimEnd() + "\n"))
                )
        );
    }

    /// <summary>The paragraph for the protocol.</summary>
    public static string Paragraph(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return PlanParagraph.Of(plan);
    }

    /// <summary>The figures, one a row that is simulated, with the analyte, group and storage in their names.</summary>
    public static ImmutableArray<FigureFile> Figures(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return FigureFiles.Of(
            new ReportModel(
                "",
                "en-US",
                PaperSize.A4,
                new RunningHeader("", "", ""),
                [
                    .. from row in plan.Rows
                    let figure = PlanFigure.Of(plan, row)
                    where figure is not null
                    select new Section(
                        $"{row.Analyte.Id} {row.Group.Id} {row.Storage.Id}",
                        StartsOnNewPage: false,
                        [figure]
                    ),
                ]
            )
        );
    }

    /// <summary>What will hardly be supported, a line a kind; empty where every chance is good enough.</summary>
    public static ImmutableArray<string> Reservations(StudyPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return PlanReservations.Of(plan);
    }

    private static IEnumerable<Block> Blocks(StudyPlan plan)
    {
        yield return Body(PlanAnswer.Of(plan));
        yield return Body(string.Join("\n", PlanAnswer.Material(plan)));
        yield return ChanceTable.Of(plan);
        if (plan.Request.Joint)
        {
            yield return JointTable.Of(plan);
        }

        if (plan.Detail is { } detail)
        {
            foreach (var block in PlanDetailBlocks.Of(plan, detail))
            {
                yield return block;
            }
        }

        yield return new Bullets([.. PlanParagraph.Failures(plan)]);
        yield return new Bullets([.. LevelWords.Of(plan)]);
        yield return Body("Expected:\n" + string.Join("\n", PlanSuppositions.Expected(plan)));
        yield return Body(PlanSuppositions.Simulated(plan) + " " + PlanSuppositions.LeftOut);
        foreach (
            var reservation in PlanReservations.Of(plan).Concat(PlanSuppositions.Supposed(plan))
        )
        {
            yield return Body("! " + reservation);
        }
    }

    private static Paragraph Body(string text) => new(text, ParagraphStyle.Body);
}
