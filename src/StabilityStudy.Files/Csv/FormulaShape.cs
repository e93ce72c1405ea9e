using System.Buffers;

namespace StabilityStudy.Files.Csv;

/// <summary>
/// Texts that a spreadsheet would run as a formula when it opens the data files attached to a report: from "=" a formula may fetch and send, and "+", "-" and "@" begin one as well.
/// </summary>
internal static class FormulaShape
{
    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789.,");

    /// <summary>Whether a text begins as a formula does. A sign alone, and a number with its sign, do not.</summary>
    public static bool Is(ReadOnlySpan<char> text) =>
        text switch
        {
            ['=' or '@' or '\t' or '\r' or '\n', ..] => true,
            ['+' or '-', _, ..] => text[1..].ContainsAnyExcept(Digits),
            _ => false,
        };

    /// <summary>Raises the query about such a text, which is not repeated where it looks like a telephone number.</summary>
    public static void Report(CsvRow row, Column column, string text) =>
        row.Add(
            CsvQueries.LooksLikeFormula,
            column,
            IdentityShape.Of(text) is null && IdentityShape.In(text) is null ? text : "",
            $"The text of \"{column.Name}\" begins with \"{text[0]}\", and a spreadsheet that opens the data of the report would take it for a formula."
        );
}
