using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>A table of [read] while it is being drafted.</summary>
/// <param name="kind">What it describes.</param>
/// <param name="table">The table that it describes.</param>
/// <param name="stated">What study.toml states of it already.</param>
/// <param name="questions">Takes what only a person can say.</param>
internal sealed class SectionDraft(
    KindOfTable kind,
    DeliveredTable table,
    StatedLayout stated,
    List<SuggestedQuestion> questions
)
{
    private readonly Dictionary<int, SuggestedColumn> _columns = [];

    /// <summary>The name of the table below [read].</summary>
    public string Section => Kind.Section;

    /// <summary>What the file holds.</summary>
    public KindOfTable Kind { get; } = kind;

    /// <summary>The columns that such a file may have.</summary>
    public CsvColumns Ours => Kind.Columns;

    /// <summary>What it describes.</summary>
    public DeliveredTable Table { get; } = table;

    /// <summary>The columns of the file.</summary>
    public ImmutableArray<ColumnProfile> Profiles { get; } = ColumnProfile.Of(table.Shape);

    /// <summary>Its lines.</summary>
    public List<ReadLine> Lines { get; } = [.. table.Lines];

    /// <summary>How the file is written, in words.</summary>
    public List<SuggestedSetting> Settings { get; } = [.. table.Settings];

    /// <summary>What the columns are read as, in the order of the file.</summary>
    public ImmutableArray<SuggestedColumn> Columns =>
        [.. _columns.OrderBy(item => item.Key).Select(item => item.Value)];

    /// <summary>The results of each row, where it has several.</summary>
    public ImmutableArray<WidePart> Parts { get; set; } = [];

    /// <summary>The columns of times by which readings of them are told apart.</summary>
    public ImmutableArray<ColumnProfile> TimesRead { get; set; } = [];

    /// <summary>The question whether the file is read in place of another one; null where none is asked.</summary>
    public int? FileQuestion { get; set; }

    /// <summary>Further files of the same form.</summary>
    public List<string> MoreFiles { get; } = [];

    /// <summary>The files that it describes.</summary>
    public IEnumerable<string> Files => MoreFiles.Prepend(Table.File);

    /// <summary>Whether somebody declared that codes which look like numbers lead to nobody.</summary>
    public bool CodesAreDeclared { get; init; }

    /// <summary>What a code looks like that could tell who a person is; null for others, and for what is declared.</summary>
    public string? IdentityOf(string code) =>
        IdentityShape.Of(code) is { } shape
        && !(CodesAreDeclared && IdentityShape.CanBeDeclared(shape))
            ? shape
            : null;

    /// <summary>What study.toml states of the file already.</summary>
    public StatedLayout Stated { get; } = stated;

    /// <summary>Asks a person, unless study.toml has the answer.</summary>
    /// <param name="text">The question.</param>
    /// <param name="couldChangeNumbers">Whether a wrong answer would give other numbers or times.</param>
    /// <param name="table">The table of the line that answers it.</param>
    /// <param name="key">Its key.</param>
    /// <returns>The number of the question.</returns>
    public int Ask(string text, bool couldChangeNumbers, string table = "", string key = "")
    {
        if (Stated.Has(table, key))
        {
            return 0;
        }

        questions.Add(new(text, couldChangeNumbers));
        return questions.Count;
    }

    /// <summary>Asks what only a person can say of the dialect.</summary>
    public void AskOfDialect()
    {
        foreach (var question in Table.Questions.Where(item => !Stated.Has("", item.Lines[0].Key)))
        {
            var number = Ask(question.Text, couldChangeNumbers: true);
            Lines.AddRange(
                question.Lines.Select((line, i) => line.Answering(number, isTried: i == 0))
            );
        }
    }

    /// <summary>Our column for one of the file, by study.toml, by our own name or by its words; null for one that is not known.</summary>
    public string? MeaningOf(ColumnProfile column) =>
        Stated.ColumnOf(column.Header)
        ?? (
            (
                Table.IsOfMessages ? Table.Meanings.GetValueOrDefault(column.Header)
                : Ours.Names.Contains(column.Header) ? column.Header
                : HeaderWords.ColumnOf(column.Header)
            )
                is { } ours
            && !Stated.Has("columns", ours)
                ? ours
                : null
        );

    /// <summary>Our column of times for one of the file; "" for a mere date or time, null for something else.</summary>
    public string? EventOf(ColumnProfile column) =>
        Stated.ColumnOf(column.Header)
        ?? (
            (
                Table.IsOfMessages
                    ? Table.Meanings.GetValueOrDefault(column.Header)
                    : HeaderWords.EventOf(column.Header)
            )
                is { } ours
            && !Stated.Has("columns", ours)
                ? ours
                : null
        );

    /// <summary>Whether nothing was said of a column yet.</summary>
    public bool IsFree(ColumnProfile column) => !_columns.ContainsKey(column.Place);

    /// <summary>Says what a column is read as.</summary>
    public void Say(ColumnProfile column, string readAs, HowSure sure, string why) =>
        _columns[column.Place] = new(column.Shown, readAs, sure, why);

    /// <summary>The same of columns of which the texts are joined.</summary>
    public void Say(ImmutableArray<ColumnProfile> columns, string readAs, HowSure sure, string why)
    {
        foreach (var column in columns)
        {
            _columns.Remove(column.Place);
        }

        _columns[columns[0].Place] = new(
            string.Join(" + ", columns.Select(column => column.Shown)),
            readAs,
            sure,
            why
        );
        foreach (var column in columns.Skip(1))
        {
            _joined.Add(column.Place);
        }
    }

    private readonly HashSet<int> _joined = [];

    /// <summary>The columns of which nothing was said yet.</summary>
    public IEnumerable<ColumnProfile> Rest =>
        Profiles.Where(column =>
            IsFree(column) && !_joined.Contains(column.Place) && column.Header.Length > 0
        );

    /// <summary>A column of ours with the facility's headers.</summary>
    public void Map(string ours, params ImmutableArray<ColumnProfile> columns) =>
        Lines.Add(ReadLine.Column(ours, [.. columns.Select(column => column.Header)]));

    /// <summary>Whether a column of ours is mapped, also by a line that answers a question.</summary>
    public bool Has(string ours) =>
        Stated.Has("columns", ours)
        || Stated.Has("constants", ours)
        || Lines.Any(line => line.Table is "columns" or "constants" && line.Key == ours);

    /// <summary>The lines as they are written: what is stated, then what is suggested beside it.</summary>
    public IEnumerable<ReadLine> Written =>
        Stated.Lines.Concat(Lines.Where(line => !Stated.Has(line.Table, line.Key)));
}
