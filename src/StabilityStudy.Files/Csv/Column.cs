namespace StabilityStudy.Files.Csv;

/// <summary>A column of a data file, declared once: how it is read, written and described.</summary>
/// <param name="Name">Its name in the header line.</param>
/// <param name="Need">Whether the file must have it.</param>
/// <param name="Note">What it means.</param>
/// <param name="Example">A value as it is written.</param>
internal abstract record Column(string Name, Need Need, string Note, string Example)
{
    /// <summary>Its name in the header line.</summary>
    public string Name
    {
        get;
        init => (field, Number) = (value, ColumnNames.NumberOf(value));
    } = Name;

    /// <summary>The number of its name, by which a row finds the field.</summary>
    public int Number { get; private init; } = ColumnNames.NumberOf(Name);

    /// <summary>The values that it may have, in words.</summary>
    public abstract string Allowed { get; }

    /// <summary>What its fields hold.</summary>
    public abstract ColumnContent Content { get; }

    /// <summary>Whether a field is a text in any words.</summary>
    public abstract bool IsFreeText { get; }

    /// <summary>Whether a canonical file has the column only where a row has a value, because earlier files are without it.</summary>
    public bool IsLater { get; init; }

    /// <summary>Whether its fields are codes in whose place a laboratory's file may have names of persons.</summary>
    public abstract bool IsOfPersons { get; }
}

/// <summary>A column with its form.</summary>
/// <param name="Form">How its fields are written.</param>
internal sealed record Column<T>(
    string Name,
    Need Need,
    ColumnForm<T> Form,
    string Note,
    string Example
) : Column(Name, Need, Note, Example)
{
    public override string Allowed => Form.Allowed;

    public override ColumnContent Content => Form.Content;

    public override bool IsFreeText => Form.IsFreeText;

    public override bool IsOfPersons => Form.IsOfPersons;

    /// <summary>The same column, read in another form.</summary>
    public Column<TOther> In<TOther>(ColumnForm<TOther> form) =>
        new(Name, Need, form, Note, Example);
}

/// <summary>What the fields of a column hold.</summary>
internal enum ColumnContent
{
    /// <summary>Codes and words.</summary>
    Words,

    /// <summary>Numbers without decimals.</summary>
    WholeNumbers,

    /// <summary>Numbers that may have decimals.</summary>
    Numbers,

    /// <summary>Results: numbers, or words in their place.</summary>
    Results,

    /// <summary>Times.</summary>
    Times,
}
