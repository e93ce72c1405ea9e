using System.Collections.Frozen;
using System.Runtime.InteropServices;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.OwnTables;

/// <summary>
/// The fields of a row of a facility's own table as they would stand in a file without any setting: headers, constants, words,
/// times, decimals, units and codes are taken as study.toml says. What does not fit a setting is left as it is.
/// </summary>
/// <param name="layout">What study.toml says of the file.</param>
/// <param name="part">What is special to this result, where a row has several.</param>
/// <param name="places">Our column → the places of its fields.</param>
/// <param name="header">The facility's headers.</param>
/// <param name="units">The unit that header or unit line states for each place; empty where none.</param>
internal sealed class LaidOutFields(
    FileLayout layout,
    TablePart part,
    FrozenDictionary<string, ImmutableArray<int>> places,
    ImmutableArray<string> header,
    ImmutableArray<string> units
) : IRowFields
{
    private static readonly ImmutableArray<string> OfResults =
    [
        "result",
        "delayed_result",
        "baseline_result",
    ];

    private static readonly ImmutableArray<string> OfTests =
    [
        "tested_at",
        "delayed_tested_at",
        "baseline_tested_at",
    ];

    // The result that is this part's own, where a row has several.
    private readonly string _result = OfResults.FirstOrDefault(part.Columns.ContainsKey, "result");
    private readonly string _testedAt = OfTests.FirstOrDefault(
        part.Columns.ContainsKey,
        "tested_at"
    );
    private TableLine _line = new(1, []);
    private (string Specimen, string Tube)? _split;
    private string _code = "";
    private string? _unitOfHeader;

    // A row asks for a field more than once.
    private string _readColumn = "";
    private string _readText = "";

    /// <summary>Goes on to another line.</summary>
    public void MoveTo(TableLine line)
    {
        _line = line;
        _readColumn = "";
        if (layout.TubePattern is { } pattern)
        {
            _code = layout.Trimmed(Stored("tube"));
            _split = pattern.Split(_code);
        }
    }

    /// <summary>The column of this part's result.</summary>
    public string ResultColumn => _result;

    /// <summary>Whether the result of this part is an empty cell.</summary>
    public bool IsEmptyResult =>
        PlacesOf(_result) is { IsEmpty: false } found && found.All(place => CellAt(place).IsEmpty);

    /// <summary>Whether the time of this part's test is an empty cell, or has none.</summary>
    public bool HasNoTime =>
        !part.Columns.ContainsKey(_testedAt)
        || PlacesOf(_testedAt).All(place => CellAt(place).IsEmpty);

    /// <summary>What stands in place of an empty result; null for nothing.</summary>
    public string? InPlaceOfResult
    {
        get;
        set
        {
            field = value;
            _readColumn = "";
        }
    }

    /// <inheritdoc/>
    public string? DateFormat => layout.DateFormat;

    /// <inheritdoc/>
    public bool Has(Column column) => Has(column.Name);

    /// <inheritdoc/>
    public bool TryGet(Column column, out ReadOnlySpan<byte> bytes)
    {
        var isSound = Fault(column) is null;
        bytes = isSound ? MemoryMarshal.AsBytes(Text(column).AsSpan()) : [];
        return isSound;
    }

    /// <inheritdoc/>
    public ReadOnlySpan<char> Characters(Column column, char[] buffer) => Text(column);

    /// <inheritdoc/>
    public string Text(Column column)
    {
        if (column.Name != _readColumn)
        {
            (_readColumn, _readText) = (column.Name, Read(column));
        }

        return _readText;
    }

    private string Read(Column column)
    {
        var name = column.Name;
        if (_split is var (specimen, tube) && name is "specimen" or "tube")
        {
            return layout.WordOf(
                name,
                name == "specimen" ? specimen
                    : layout.KeepsWholeCode ? _code
                    : tube
            );
        }

        if (name == "unit")
        {
            return ConstantOf(name) is { } stated
                ? layout.Conversions.TryGetValue(stated, out var conversion)
                    ? conversion.To
                    : stated
                : layout.UnitReadAs(StatedUnit());
        }

        if (ConstantOf(name) is { } constant)
        {
            return Converted(column, constant);
        }

        if (name == _result && InPlaceOfResult is { } word && IsEmptyResult)
        {
            return word;
        }

        if (name == "tube" && layout.TimePointOfTube.Count > 0 && !Has(name))
        {
            return layout.TubeAt(
                layout.WordOf("specimen", Stored("specimen")),
                ConstantOf("time_point") ?? layout.WordOf("time_point", Stored("time_point"))
            );
        }

        if (name == "time_point" && layout.TimePointOfTube.Count > 0 && !Has(name))
        {
            return layout.TimePointOf(
                layout.TubePattern is null ? layout.Trimmed(Stored("tube")) : _code,
                _split?.Tube ?? layout.WordOf("tube", Stored("tube"))
            );
        }

        var found = PlacesOf(name);
        var text =
            column.Content == ColumnContent.Times
                ? TimeForms.Translate(layout, name, [.. found.Select(CellAt)])
            : found is [var place] && CellAt(place).Kind != CellKind.Text
                ? layout.WordOf(name, CellText(CellAt(place)))
            : layout.Translate(column, Stored(name));
        return Converted(column, text);
    }

    /// <inheritdoc/>
    public string Observed(Column column) => Stored(column.Name);

    /// <inheritdoc/>
    public string Where(Column column) =>
        PlacesOf(column.Name) is [var place, ..]
        && place < header.Length
        && header[place] is { Length: > 0 } named
        && named != column.Name
            ? named
            : "";

    /// <inheritdoc/>
    public FieldFault? Fault(Column column)
    {
        if (ConstantOf(column.Name) is null)
        {
            foreach (var place in PlacesOf(column.Name))
            {
                if (FieldFaults.Of(column, CellAt(place), layout) is { } fault)
                {
                    return fault;
                }
            }
        }

        return PatternFault(column);
    }

    private FieldFault? PatternFault(Column column) =>
        layout.TubePattern is { } pattern
        && _split is null
        && (
            column.Name is "specimen" or "tube"
            || (column.Name == "time_point" && layout.TimePointOfTube.Count > 0)
        )
        && _code.Length > 0
            ? new(
                RowQueries.TubePatternFailed,
                IdentityShape.Of(_code) is null ? _code : "",
                $"The code does not have the form tube_pattern = \"{layout.TubePattern!.Text}\", so that specimen and tube cannot be told apart.",
                "Correct the code, or tube_pattern in study.toml.",
                "tube"
            )
            : null;

    private bool Has(string column) => !PlacesOf(column).IsEmpty;

    private string? ConstantOf(string column) =>
        part.Constants.TryGetValue(column, out var own) ? own
        : layout.Constants.TryGetValue(column, out var shared) && !part.Columns.ContainsKey(column)
            ? shared
        : null;

    /// <summary>The unit as the file states it: in its column, else in the header of the results or in the line below.</summary>
    private string StatedUnit()
    {
        if (Has("unit"))
        {
            return layout.Trimmed(Stored("unit"));
        }

        return _unitOfHeader ??= OfResults
            .SelectMany(name => PlacesOf(name))
            .Where(place => place < units.Length)
            .Select(place => units[place])
            .Distinct()
            .ToArray()
            is [var only]
            ? only
            : "";
    }

    private string Converted(Column column, string text)
    {
        if (layout.Conversions.Count == 0 || !FileLayout.IsInUnit(column))
        {
            return text;
        }

        var stated = ConstantOf("unit") ?? layout.WordOf("unit", StatedUnit());
        return layout.Conversions.TryGetValue(stated, out var conversion)
            ? conversion.Apply(text)
            : text;
    }

    private string CellText(TableCell cell) =>
        cell.Kind == CellKind.RoundedNumber && layout.Form.Numbers == ShownNumber.Stored
            ? cell.Other
            : cell.Text;

    private string Stored(string column)
    {
        var found = PlacesOf(column);
        return found.Length == 1
            ? CellAt(found[0]).Text
            : string.Join(' ', found.Select(place => CellAt(place).Text).Where(t => t.Length > 0));
    }

    /// <summary>The places of a column in the header.</summary>
    public ImmutableArray<int> PlacesOf(string column) => places.GetValueOrDefault(column, []);

    private TableCell CellAt(int place) =>
        place < _line.Cells.Length ? _line.Cells[place] : new("");
}
