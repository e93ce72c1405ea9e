using System.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Lines of a file as people write them: "4, 7 to 19, 23".</summary>
internal static class LineRanges
{
    public static string Of(IEnumerable<int> lines)
    {
        var text = new StringBuilder();
        (int First, int Last)? run = null;
        foreach (var line in lines.Distinct().Order())
        {
            if (run is { } open && line == open.Last + 1)
            {
                run = (open.First, line);
                continue;
            }

            Append(text, run);
            run = (line, line);
        }

        Append(text, run);
        return text.ToString();
    }

    private static void Append(StringBuilder text, (int First, int Last)? run)
    {
        if (run is not var (first, last))
        {
            return;
        }

        text.Append(text.Length > 0 ? ", " : "");
        text.Append(
            CultureInfo.InvariantCulture,
            $"{first}{(last == first ? "" : last == first + 1 ? $", {last}" : $" to {last}")}"
        );
    }
}
