namespace StabilityStudy.Files.Tables;

/// <summary>A field of a table. In a workbook a cell also has a type, and what it shows may differ from what it stores.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Other">For a number that is shown otherwise than it is stored: what is stored. For a cell that cannot be taken at its word: what is shown or why.</param>
internal readonly record struct TableCell(
    string Text,
    CellKind Kind = CellKind.Text,
    string Other = ""
)
{
    /// <summary>Why the cell cannot be used; null for all others.</summary>
    public FieldFault? Fault { get; private init; }

    /// <summary>Whether the cell is empty.</summary>
    public bool IsEmpty =>
        Kind is not (CellKind.Merged or CellKind.Refused) && string.IsNullOrEmpty(Text);

    /// <summary>Whether something of its own stands in the cell.</summary>
    public bool IsFilled => !IsEmpty && Kind is not (CellKind.Merged or CellKind.Refused);

    /// <summary>Whether the cell is a date, with or without a time of day.</summary>
    public bool IsDate => Kind is CellKind.Date or CellKind.DateAndTime;

    /// <summary>A cell that cannot be used.</summary>
    public static TableCell Refusal(FieldFault fault) =>
        new("", CellKind.Refused) { Fault = fault };
}

/// <summary>What a cell holds.</summary>
internal enum CellKind
{
    /// <summary>Text, as every field of a CSV file.</summary>
    Text,

    /// <summary>A number, shown as it is stored.</summary>
    Number,

    /// <summary>A number that is shown with fewer decimals than are stored.</summary>
    RoundedNumber,

    /// <summary>A number whose format shows more or something else than its digits.</summary>
    DisguisedNumber,

    /// <summary>A day.</summary>
    Date,

    /// <summary>A day with a time.</summary>
    DateAndTime,

    /// <summary>A time of day.</summary>
    TimeOfDay,

    /// <summary>A span of time.</summary>
    Duration,

    /// <summary>An error of a formula.</summary>
    Error,

    /// <summary>A cell that is merged with another, which holds the content.</summary>
    Merged,

    /// <summary>What stands in a field of a message and cannot be used.</summary>
    Refused,
}

/// <summary>A line of a table.</summary>
/// <param name="Number">Line of the file, or row of the sheet, counted from 1.</param>
/// <param name="Cells">Its fields.</param>
internal sealed record TableLine(int Number, TableCell[] Cells)
{
    /// <summary>Whether nothing stands in it.</summary>
    public bool IsEmpty => Array.TrueForAll(Cells, cell => cell.IsEmpty);

    /// <summary>The text at a place; empty where the line is shorter.</summary>
    public string TextAt(int place) => place < Cells.Length ? Cells[place].Text ?? "" : "";
}
