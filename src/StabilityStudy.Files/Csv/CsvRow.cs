using System.Collections.Frozen;
using System.Globalization;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Csv;

/// <summary>
/// The current row of a file. As in a TOML table, a value that cannot be read raises a stop query and yields a
/// placeholder; <see cref="IsSound"/> then is false and the row is not used.
/// </summary>
internal sealed partial class CsvRow(
    string fileName,
    FrozenDictionary<string, int> places,
    QueryList queries
)
{
    private string[] _fields = [];
    private int _stopsBefore;
    private bool _isUndecided;

    /// <summary>Line on which the row begins in the facility's file.</summary>
    public int Line { get; private set; }

    /// <summary>Whether every value read so far could be read.</summary>
    public bool IsSound => queries.StopCount == _stopsBefore && !_isUndecided;

    /// <summary>Goes on to the next row.</summary>
    /// <param name="line">Line on which it begins in this file.</param>
    /// <param name="fields">Its fields.</param>
    public void MoveTo(int line, string[] fields)
    {
        _fields = fields;
        _stopsBefore = queries.StopCount;
        _isUndecided = false;
        Line = line;
        if (places.ContainsKey(CsvColumns.SourceRow))
        {
            Line = OptionalWhole(CsvColumns.SourceRow, 1, int.MaxValue) ?? line;
        }
    }

    /// <summary>Raises a query about a column of this row.</summary>
    public void Add(
        QueryKind kind,
        string column,
        string observed,
        string message,
        string action
    ) => queries.Add(kind, new QuerySource(fileName, Line, column), observed, message, action);

    /// <summary>The field as it stands; empty when the file has no such column.</summary>
    private string Field(string column) =>
        places.TryGetValue(column, out var place) ? _fields[place] : "";

    /// <summary>The field after the checks that hold for every column but free text.</summary>
    private string Plain(string column)
    {
        var text = Field(column);
        if (text.Length == 0)
        {
            return text;
        }

        if (text.Any(char.IsControl))
        {
            Add(
                FileQueries.ControlCharacter,
                column,
                "",
                "The value holds a line break or another character that cannot be seen.",
                "Type the value again."
            );
            return "";
        }

        if (char.IsWhiteSpace(text[0]) || char.IsWhiteSpace(text[^1]))
        {
            Add(
                RowQueries.SurroundingSpace,
                column,
                text,
                "The value begins or ends with a space.",
                "Remove the space."
            );
            return "";
        }

        return text;
    }

    private void Missing(string column) =>
        Add(
            RowQueries.MissingValue,
            column,
            "",
            $"\"{column}\" is empty.",
            $"Fill in \"{column}\"."
        );

    private static string Invariant(int number) => number.ToString(CultureInfo.InvariantCulture);
}
