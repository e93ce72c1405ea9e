using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Cli.Console;

/// <summary>Data queries as text: what was read where, what is wrong, what to do.</summary>
internal static class QueryListing
{
    private const string Indent = "    ";

    /// <summary>A whole column may be written otherwise; of so many queries alike the first are in full, and the lines of the others.</summary>
    private const int MostAlike = 5;

    private const int InFull = 3;

    /// <summary>Every query, and how many there are.</summary>
    public static void Write(Terminal terminal, ImmutableArray<DataQuery> queries)
    {
        Write(terminal, queries, answer: null);
        terminal.Out.WriteLine(Total(queries));
    }

    /// <summary>Every query with the reference by which study.toml answers it.</summary>
    /// <param name="terminal">Where to write.</param>
    /// <param name="queries">The queries.</param>
    /// <param name="answer">The answer to one; null without.</param>
    public static void WriteEach(
        Terminal terminal,
        ImmutableArray<DataQuery> queries,
        Func<DataQuery, string?> answer
    ) => Write(terminal, queries, answer);

    private static void Write(
        Terminal terminal,
        ImmutableArray<DataQuery> queries,
        Func<DataQuery, string?>? answer
    )
    {
        var kinds = queries
            .OrderBy(query => query.Severity)
            .GroupBy(query => (query.Code, query.Source.File, query.Source.Column, query.Action));
        foreach (var alike in kinds)
        {
            ImmutableArray<DataQuery> all = [.. alike];
            var shown = all.Length > MostAlike && all.All(HasLine) ? InFull : all.Length;
            foreach (var query in all[..shown])
            {
                WriteQuery(terminal, query, answer);
            }

            if (shown < all.Length)
            {
                WriteWrapped(
                    terminal,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"and {all.Length - shown} more of this kind, to be answered alike: lines {LineRanges.Of(all[shown..].Select(query => query.Source.Line!.Value))}"
                    )
                );
                terminal.Out.WriteLine();
            }
        }
    }

    private static bool HasLine(DataQuery query) => query.Source.Line is not null;

    /// <summary>In quotes where a space at an end would not be seen.</summary>
    private static string Shown(string observed) =>
        observed.Trim().Length == observed.Length ? observed : $"\"{observed}\"";

    private static void WriteQuery(
        Terminal terminal,
        DataQuery query,
        Func<DataQuery, string?>? answer
    )
    {
        WriteHead(terminal, query, answer is not null && query.Severity != Severity.Stop);
        if (query.Observed.Length > 0)
        {
            WriteWrapped(terminal, "read: " + Shown(query.Observed));
        }

        WriteWrapped(terminal, query.Message);
        WriteWrapped(terminal, answer?.Invoke(query) ?? "to do: " + query.Action);
        terminal.Out.WriteLine();
    }

    /// <summary>"2 stop, 1 attention, 0 note": one line.</summary>
    public static string Total(ImmutableArray<DataQuery> queries) =>
        string.Join(
            ", ",
            Enum.GetValues<Severity>()
                .Select(severity =>
                    FormattableString.Invariant(
                        $"{queries.Count(query => query.Severity == severity)} {Word(severity)}"
                    )
                )
        );

    /// <summary>Severity, place and code; the code on a line of its own where the three do not fit on one.</summary>
    private static void WriteHead(Terminal terminal, DataQuery query, bool withReference)
    {
        var place = $"{Word(query.Severity)}  {query.Source}";
        var code = $"[{query.Code}]" + (withReference ? "  " + QueryReference.Of(query) : "");
        var fits = place.Length + 2 + code.Length <= terminal.Width;
        terminal.WriteWord(Word(query.Severity).ToUpperInvariant(), StyleOf(query.Severity));
        if (fits)
        {
            terminal.Out.WriteLine($"  {query.Source}  {code}");
            return;
        }

        // Two blanks would be taken for one where a line is broken.
        var start = Word(query.Severity) + " ";
        var lines = TextLines.WrapLine(start + query.Source, terminal.Width - 1, Indent);
        terminal.Out.WriteLine("  " + lines[0].TrimStart()[start.Length..]);
        foreach (var line in lines[1..])
        {
            terminal.Out.WriteLine(line);
        }

        terminal.Out.WriteLine(Indent + code);
    }

    private static void WriteWrapped(Terminal terminal, string text)
    {
        foreach (var line in TextLines.WrapLine(text, terminal.Width - Indent.Length))
        {
            terminal.Out.WriteLine(Indent + line);
        }
    }

    private static string Word(Severity severity) =>
        severity switch
        {
            Severity.Stop => "stop",
            Severity.Attention => "attention",
            Severity.Note => "note",
        };

    private static string? StyleOf(Severity severity) =>
        severity switch
        {
            Severity.Stop => "1;31",
            Severity.Attention => "1;33",
            Severity.Note => null,
        };
}
