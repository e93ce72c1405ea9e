namespace StabilityStudy.Reporting.Html;

/// <summary>The rows that show the results of specimens, with their identifiers in the page.</summary>
internal sealed class SpecimenRows
{
    private readonly ImmutableDictionary<string, ImmutableArray<SpecimenRow>> _rows;
    private readonly ImmutableHashSet<string> _subjects;
    private readonly ImmutableHashSet<string> _analytes;

    private SpecimenRows(ImmutableDictionary<string, ImmutableArray<SpecimenRow>> rows)
    {
        _rows = rows;
        var results = rows.Values.SelectMany(found => found).Select(row => row.Results).ToArray();
        _subjects = [.. results.Select(item => item.Subject)];
        _analytes = [.. results.Select(item => item.Analyte)];
    }

    /// <summary>The first row of every specimen of every subject.</summary>
    public static SpecimenRows Of(ReportModel model)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        return new(
            model
                .Sections.SelectMany(section => section.Blocks.Concat(section.Foot))
                .SelectMany(Tables)
                .SelectMany(table => table.Rows)
                .Select(row => row.ResultsOf)
                .OfType<SpecimenResults>()
                .Distinct()
                .Select(results => new SpecimenRow(results, Identifier(results.Specimen, known)))
                .GroupBy(row => row.Results.Specimen, StringComparer.Ordinal)
                .ToImmutableDictionary(
                    rows => rows.Key,
                    rows => rows.ToImmutableArray(),
                    StringComparer.Ordinal
                )
        );
    }

    /// <summary>Whether a text names whose results rows show: what follows it is about those.</summary>
    public bool IsSubject(string text) => _subjects.Contains(text);

    /// <summary>The rows of a specimen, one a subject; none for what is no code of a specimen.</summary>
    public ImmutableArray<SpecimenRow> RowsOf(string specimen) =>
        _rows.GetValueOrDefault(specimen, []);

    /// <summary>Whether a word is the code of an analyte with results.</summary>
    public bool IsAnalyte(string word) => _analytes.Contains(word);

    /// <summary>The row that a mention means: that of the subject it stands under, else of the analyte named before it, else the first; null without any.</summary>
    public SpecimenRow? Find(string specimen, string? subject, string? analyte) =>
        RowsOf(specimen) is { IsEmpty: false } rows
            ? rows.FirstOrDefault(row => row.Results.Subject == subject)
                ?? rows.FirstOrDefault(row => row.Results.Analyte == analyte)
                ?? rows[0]
            : null;

    private static IEnumerable<Table> Tables(Block block) =>
        block switch
        {
            Table table => [table],
            KeepTogether kept => kept.Blocks.SelectMany(Tables),
            _ => [],
        };

    /// <summary>"specimen-N-011"; letters that an identifier or an address would change become points.</summary>
    private static string Identifier(string specimen, HashSet<string> known)
    {
        var plain =
            "specimen-"
            + string.Concat(
                specimen.Select(letter =>
                    char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '.'
                )
            );
        var own = plain;
        for (var number = 2; !known.Add(own); number++)
        {
            own = string.Create(CultureInfo.InvariantCulture, $"{plain}.{number}");
        }

        return own;
    }
}

/// <summary>The first row with the results of a specimen.</summary>
/// <param name="Results">Whose results they are.</param>
/// <param name="Id">Identifier of the row in the page.</param>
internal sealed record SpecimenRow(SpecimenResults Results, string Id);
