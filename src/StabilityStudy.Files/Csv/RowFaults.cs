namespace StabilityStudy.Files.Csv;

/// <summary>
/// Gathers what is wrong with the rows of a file, so that one cause is one query with its number of rows: the same word in
/// the same column, or times of the same form, in however many rows.
/// </summary>
internal sealed class RowFaults(string fileName, QueryList queries)
{
    private const int LinesNamed = 5;
    private readonly Dictionary<(QueryKind Kind, string Column, string Cause), Group> _groups = [];
    private readonly List<Group> _inOrder = [];
    private readonly Dictionary<QueryKind, int> _counts = [];

    /// <summary>Adds a fault of a row.</summary>
    public void Add(
        QueryKind kind,
        int line,
        string column,
        string observed,
        string message,
        string? action
    )
    {
        var cause = IsOfForm(kind) ? FormOf(observed) : observed + "\n" + message;
        if (_groups.TryGetValue((kind, column, cause), out var group))
        {
            group.Count(line);
            return;
        }

        group = new Group(kind, line, column, observed, message, action);
        var listed = _counts.GetValueOrDefault(kind);
        if (listed < QueryList.MostListed)
        {
            _counts[kind] = listed + 1;
            _groups.Add((kind, column, cause), group);
            _inOrder.Add(group);
            return;
        }

        // Further ones are counted only, so that a million different faults do not fill the memory.
        _inOrder.Last(other => other.Kind == kind).Beyond++;
    }

    /// <summary>Raises the queries.</summary>
    public void Conclude()
    {
        foreach (var group in _inOrder)
        {
            Raise(group);
            for (var i = 0; i < group.Beyond; i++)
            {
                queries.Add(group.Kind, new QuerySource(fileName, group.Line, null), "", "", "");
            }
        }

        _inOrder.Clear();
        _groups.Clear();
    }

    private void Raise(Group group) =>
        queries.Add(
            group.Kind,
            new QuerySource(fileName, group.Line, group.Column),
            group.Observed,
            group.Rows == 1
                ? group.Message
                : FormattableString.Invariant(
                    $"{group.Message} {(IsOfForm(group.Kind) ? "Of this form" : "The same")} in {group.Rows} rows: lines {group.LineWords}."
                ),
            group.Action
        );

    private static bool IsOfForm(QueryKind kind) =>
        kind == RowQueries.NotATime || kind == RowQueries.TubePatternFailed;

    // Digits and letters alone do not make another form: 02.03.26 and 03.03.26, or Mar and Apr.
    private static string FormOf(string text) =>
        string.Create(
            text.Length,
            text,
            (form, from) =>
            {
                for (var i = 0; i < form.Length; i++)
                {
                    form[i] =
                        char.IsDigit(from[i]) ? '0'
                        : char.IsLetter(from[i]) ? 'a'
                        : from[i];
                }
            }
        );

    private sealed record Group(
        QueryKind Kind,
        int Line,
        string Column,
        string Observed,
        string Message,
        string? Action
    )
    {
        private readonly List<(int First, int Last)> _lines = [(Line, Line)];
        private int _last = Line;

        public int Rows { get; private set; } = 1;

        public int Beyond { get; set; }

        /// <summary>"2 to 10, 12".</summary>
        public string LineWords =>
            string.Join(
                ", ",
                _lines
                    .Take(LinesNamed)
                    .Select(range =>
                        range.First == range.Last
                            ? FormattableString.Invariant($"{range.First}")
                            : FormattableString.Invariant($"{range.First} to {range.Last}")
                    )
            ) + (_lines.Count > LinesNamed ? " …" : "");

        public void Count(int line)
        {
            if (line == _last)
            {
                return;
            }

            Rows++;
            if (line == _last + 1 && _lines.Count <= LinesNamed && _lines[^1].Last == _last)
            {
                _lines[^1] = (_lines[^1].First, line);
            }
            else if (_lines.Count <= LinesNamed)
            {
                _lines.Add((line, line));
            }

            _last = line;
        }
    }
}
