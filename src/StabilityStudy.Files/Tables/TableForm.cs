namespace StabilityStudy.Files.Tables;

/// <summary>Where a table stands in its file, and how its lines are to be taken.</summary>
/// <param name="Sheet">Name of the sheet of a workbook; null for its only one.</param>
/// <param name="HeaderLine">Line of the header; null for the first that is not empty.</param>
/// <param name="HeaderRows">Lines of which the header consists.</param>
/// <param name="FooterLines">Lines behind the last row.</param>
/// <param name="HeaderRepeats">Whether the header stands again above further blocks, with a title before it.</param>
/// <param name="Units">Where the units of the results stand.</param>
/// <param name="EmptyCell">What an empty cell of a table with several results a row means; null when study.toml does not say.</param>
/// <param name="Numbers">Which number is meant where a cell shows another than it stores; null when study.toml does not say.</param>
internal sealed record TableForm(
    string? Sheet = null,
    int? HeaderLine = null,
    int HeaderRows = 1,
    int FooterLines = 0,
    bool HeaderRepeats = false,
    UnitPlace Units = UnitPlace.Column,
    EmptyCell? EmptyCell = null,
    ShownNumber? Numbers = null
);

/// <summary>Where the units of the results stand.</summary>
internal enum UnitPlace
{
    /// <summary>In a column of their own, or nowhere in the file.</summary>
    Column,

    /// <summary>In brackets behind the header of the results: "aPTT (s)".</summary>
    Header,

    /// <summary>In the line below the header.</summary>
    LineBelow,
}

/// <summary>What an empty cell means in a table with several results a row.</summary>
internal enum EmptyCell
{
    /// <summary>A result is missing, without a reason.</summary>
    Missing,

    /// <summary>The tube was not tested.</summary>
    NotTested,

    /// <summary>No result was planned there.</summary>
    NotPlanned,
}

/// <summary>Which number is meant where a cell shows another than it stores.</summary>
internal enum ShownNumber
{
    /// <summary>The one that is shown, as it was reported.</summary>
    Shown,

    /// <summary>The one that is stored.</summary>
    Stored,
}
