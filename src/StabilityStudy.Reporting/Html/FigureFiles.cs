using System.Text;
using System.Xml.Linq;
using StabilityStudy.Reporting.Charts;

namespace StabilityStudy.Reporting.Html;

/// <summary>One figure of a report as a file.</summary>
/// <param name="Name">Name of the file: a number in the order of the report, and its section.</param>
/// <param name="Svg">The file, with its fonts inside.</param>
public sealed record FigureFile(string Name, ReadOnlyMemory<byte> Svg);

/// <summary>Every figure of a report as a file of its own, for a slide or a procedure.</summary>
public static class FigureFiles
{
    /// <summary>The figures in the order of the report; equal models give equal files.</summary>
    public static ImmutableArray<FigureFile> Of(ReportModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return
        [
            .. model
                .Sections.SelectMany(section =>
                    section
                        .Blocks.SelectMany(Charts)
                        .Select(item => (section.Title, item.Chart, item.Width))
                )
                .Select(
                    (item, index) =>
                        new FigureFile(
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"{index + 1:00}-{Plain(item.Title)}.svg"
                            ),
                            Draw(item.Chart, item.Width)
                        )
                ),
        ];
    }

    private static IEnumerable<(ChartBlock Chart, int Width)> Charts(Block block) =>
        block switch
        {
            ChartBlock chart => [(chart, ChartSvg.Width)],
            Floating floating => [(floating.Figure, ChartSvg.Width)],
            ChartRow row => row.Charts.Select(chart => (chart, ChartSvg.WidthInRow)),
            KeepTogether kept => kept.Blocks.SelectMany(Charts),
            Heading
            or Paragraph
            or Bullets
            or DefinitionList
            or MonospaceLines
            or VerdictBlock
            or DecisionTable
            or KeyMessage
            or SignatureBoxes
            or Table
            or FlowFigure
            or PageBreak => [],
            _ => throw new InvalidOperationException($"No figures of {block.GetType().Name}."),
        };

    private static byte[] Draw(ChartBlock chart, int width)
    {
        var drawn = ChartSvg.Draw(chart, width, "");
        drawn.AddFirst(new XElement(SvgNames.Svg + "style", HtmlStyle.FigureFonts));
        return Encoding.UTF8.GetBytes(drawn.ToString(SaveOptions.DisableFormatting) + "\n");
    }

    /// <summary>A title as a part of a file name that every system takes.</summary>
    private static string Plain(string title)
    {
        var name = new StringBuilder();
        foreach (var letter in title.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                name.Append(letter);
            }
            else if (name.Length > 0 && name[^1] != '-')
            {
                name.Append('-');
            }
        }

        return name.ToString().Trim('-');
    }
}
