namespace StabilityStudy.Reporting.Model;

/// <summary>A table; its column heads are repeated on every page it reaches.</summary>
internal sealed record Table : Block
{
    /// <summary>Creates a table.</summary>
    /// <param name="caption">Caption above the table.</param>
    /// <param name="columns">At least one column.</param>
    /// <param name="rows">Rows; each data row has one cell a column, each group heading has one cell.</param>
    /// <param name="note">Remark below the table, if any.</param>
    /// <exception cref="ArgumentException">There is no column, or a row has another number of cells.</exception>
    public Table(
        string caption,
        ImmutableArray<Column> columns,
        ImmutableArray<Row> rows,
        string? note
    )
    {
        if (columns.IsDefaultOrEmpty)
        {
            throw new ArgumentException("A table has at least one column.", nameof(columns));
        }

        foreach (var row in rows)
        {
            var wanted = row.Kind == RowKind.GroupHeading ? 1 : columns.Length;
            if (row.Cells.Length != wanted)
            {
                throw new ArgumentException(
                    "A data row has one cell a column, a group heading one cell.",
                    nameof(rows)
                );
            }
        }

        Caption = caption;
        Columns = columns;
        Rows = rows;
        Note = note;
    }

    /// <summary>Caption above the table.</summary>
    public string Caption { get; private init; }

    /// <summary>The same table under another caption.</summary>
    public Table WithCaption(string caption) => this with { Caption = caption };

    /// <summary>Columns from left to right.</summary>
    public ImmutableArray<Column> Columns { get; }

    /// <summary>Rows from top to bottom; may be empty.</summary>
    public ImmutableArray<Row> Rows { get; }

    /// <summary>Remark below the table; null when there is none.</summary>
    public string? Note { get; }

    /// <summary>Whether it is read for its conclusions, each row by itself: where there is no room its cells stand below each other.</summary>
    public bool IsOfConclusions { get; init; }
}

/// <summary>A column of a <see cref="Table"/>.</summary>
/// <param name="Header">Column head.</param>
/// <param name="Alignment">Where the texts of the column stand.</param>
/// <param name="RelativeWidth">Share of the table's width relative to the other columns; above 0.</param>
internal sealed record Column(string Header, ColumnAlignment Alignment, double RelativeWidth)
{
    /// <summary>Whether a brief form of the report leaves it away.</summary>
    public bool IsDetail { get; init; }

    /// <summary>Whether its cells are codes of specimens and nothing else.</summary>
    public bool IsOfSpecimens { get; init; }
}

/// <summary>Where the texts of a column stand.</summary>
internal enum ColumnAlignment
{
    /// <summary>At the left edge.</summary>
    Left,

    /// <summary>At the right edge.</summary>
    Right,

    /// <summary>Decimal points below each other.</summary>
    DecimalPoint,

    /// <summary>In the middle.</summary>
    Center,
}

/// <summary>A row of a <see cref="Table"/>.</summary>
internal sealed record Row(ImmutableArray<TableCell> Cells, RowKind Kind = RowKind.Data)
{
    /// <summary>Whose results the row shows; null where it shows something else.</summary>
    public SpecimenResults? ResultsOf { get; init; }

    /// <summary>Analyte and group that the row is about, as headings name them; null where the row is about several or its heading tells.</summary>
    public string? Subject { get; init; }
}

/// <summary>The results of a specimen.</summary>
/// <param name="Specimen">Its code.</param>
/// <param name="Analyte">Code of the analyte.</param>
/// <param name="Subject">Analyte and group, as headings name them.</param>
internal sealed record SpecimenResults(string Specimen, string Analyte, string Subject);

/// <summary>What a row is.</summary>
internal enum RowKind
{
    /// <summary>One cell a column.</summary>
    Data,

    /// <summary>One cell across all columns that names the rows below it.</summary>
    GroupHeading,
}

/// <summary>One cell.</summary>
/// <param name="Text">Text of the cell, possibly empty.</param>
/// <param name="Emphasis">How it is set.</param>
/// <param name="Shape">Shape in front of the text, if any; the text says the same in words.</param>
internal sealed record TableCell(
    string Text,
    Emphasis Emphasis = Emphasis.None,
    VerdictShape? Shape = null
);

/// <summary>How the text of a cell is set.</summary>
internal enum Emphasis
{
    /// <summary>As the rest.</summary>
    None,

    /// <summary>Heavier.</summary>
    Strong,

    /// <summary>Slanted, for what is less important or left out.</summary>
    Muted,
}
