namespace StabilityStudy.Files.Csv;

/// <summary>How much of a file could be read.</summary>
internal enum CsvReach
{
    /// <summary>Nothing: the file or its header line cannot be used.</summary>
    Nothing,

    /// <summary>Some rows; others do not fit the header line.</summary>
    SomeRows,

    /// <summary>Every row, though values in it may be faulty.</summary>
    EveryRow,
}
