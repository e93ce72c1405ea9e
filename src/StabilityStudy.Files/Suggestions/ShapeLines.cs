namespace StabilityStudy.Files.Suggestions;

/// <summary>Where a table stands in its file, as lines of study.toml and in words.</summary>
internal static class ShapeLines
{
    /// <summary>The lines of study.toml; what is usual needs none.</summary>
    public static IEnumerable<ReadLine> Of(TableShape shape)
    {
        if (!shape.IsFirst)
        {
            yield return ReadLine.Number("header_line", shape.Header.First.Number);
        }

        if (shape.Header.Lines.Length > 1)
        {
            yield return ReadLine.Number("header_rows", shape.Header.Lines.Length);
        }

        if (!shape.Footer.IsEmpty)
        {
            yield return ReadLine.Number("footer_lines", shape.Footer.Length);
        }

        if (shape.Titles > 0)
        {
            yield return new("header_repeats", "true");
        }

        if (shape.Units is not null)
        {
            yield return ReadLine.Text("units", "in the line below");
        }
    }

    /// <summary>The same in words.</summary>
    public static IEnumerable<SuggestedSetting> InWords(TableShape shape, bool isWhole)
    {
        var at = shape.Header.First.Number;
        var isOne = shape.Header.Lines.Length == 1;
        yield return new(
            "header",
            isOne
                ? FormattableString.Invariant($"line {at}")
                : FormattableString.Invariant($"lines {at} and {shape.Header.Lines[^1].Number}"),
            isOne ? HowSure.Sure : HowSure.Likely,
            !isOne ? "titles stand over several columns, and the names of both lines are joined"
                : at == 1 ? "the first line has the names"
                : shape.IsFirst ? "only empty lines before it"
                : FormattableString.Invariant(
                    $"{(at == 2 ? "line 1 is" : $"lines 1 to {at - 1} are")} a preamble"
                )
        );
        if (shape.Units is { } units)
        {
            yield return new(
                "units",
                FormattableString.Invariant($"line {units.Number}"),
                HowSure.Sure,
                "nothing but units below the header"
            );
        }

        if (shape.Repeats > 0)
        {
            yield return new(
                "blocks",
                FormattableString.Invariant($"{shape.Repeats + 1}"),
                HowSure.Sure,
                "the header stands again above each"
                    + (shape.Titles > 0 ? ", with a title before it" : "")
            );
        }

        if (!shape.Footer.IsEmpty)
        {
            var (first, last) = (shape.Footer[0].Number, shape.Footer[^1].Number);
            var counts =
                shape.Footer is [var only]
                && PlainWords
                    .Of(string.Join(' ', only.Cells.Select(cell => cell.Text)))
                    .Contains(shape.Rows.Length.ToString(CultureInfo.InvariantCulture));
            yield return new(
                "footer",
                first == last
                    ? FormattableString.Invariant($"line {first}")
                    : FormattableString.Invariant($"lines {first} to {last}"),
                HowSure.Likely,
                counts && isWhole
                    ? "it counts the rows, and the number is right: left out"
                    : "of another form than the rows: left out"
            );
        }

        if (shape.Others > 0)
        {
            yield return new(
                "odd rows",
                FormattableString.Invariant($"{shape.Others}"),
                HowSure.Ask,
                "another number of fields than the header: each will be a query"
            );
        }
    }
}
