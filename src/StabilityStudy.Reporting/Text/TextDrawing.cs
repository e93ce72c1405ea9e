using System.Text;

namespace StabilityStudy.Reporting.Text;

/// <summary>Writes a report as plain text: for a terminal, an e-mail, or a comparison of two versions.</summary>
public static class TextDrawing
{
    /// <summary>Writes what is read at once; the last line tells where everything stands.</summary>
    /// <param name="model">The whole report.</param>
    /// <param name="width">Most characters in a line.</param>
    public static string DrawBrief(ReportModel model, int width = 80)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Draw(BriefReport.Of(model), width);
    }

    /// <summary>
    /// Writes a report. Tables are wrapped to the width, or written row by row where their columns would be too
    /// narrow; charts become their captions and alternative texts. Lines end in a line feed.
    /// </summary>
    /// <param name="model">The report.</param>
    /// <param name="width">Most characters in a line; only a word that is longer than a line is broken.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is below 40.</exception>
    public static string Draw(ReportModel model, int width = 80)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 40);
        var lines = new List<string>();
        Add(lines, TextLines.Wrap(model.Title, width));
        lines.Add(new string('=', width));
        Add(lines, TextLines.Wrap(model.Header.Left, width));
        Add(lines, TextLines.Wrap(model.Header.Right, width));
        Add(lines, TextLines.Wrap(model.Header.Fingerprint, width));
        foreach (var section in model.Sections)
        {
            lines.Add("");
            Add(lines, TextLines.Wrap(section.Title, width));
            lines.Add(new string('-', width));
            AddBlocks(lines, section.Blocks, width);
            AddBlocks(lines, section.Foot, width);
        }

        var text = new StringBuilder();
        foreach (var line in lines)
        {
            text.Append(line.TrimEnd(' ')).Append('\n');
        }

        return text.ToString();
    }

    private static void AddBlocks(List<string> lines, ImmutableArray<Block> blocks, int width)
    {
        foreach (var block in blocks)
        {
            if (block is KeepTogether group)
            {
                AddBlocks(lines, group.Blocks, width);
                continue;
            }

            var written = TextBlocks.Write(block, width);
            if (!written.IsEmpty)
            {
                lines.Add("");
                Add(lines, written);
            }
        }
    }

    private static void Add(List<string> lines, ImmutableArray<string> more) =>
        lines.AddRange(more);
}
