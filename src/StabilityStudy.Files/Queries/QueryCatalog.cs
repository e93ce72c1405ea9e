using System.Text;

namespace StabilityStudy.Files.Queries;

/// <summary>Every kind of data query that reading and analyzing a study folder can raise.</summary>
public static class QueryCatalog
{
    /// <summary>All kinds, in the order in which a study is read.</summary>
    public static ImmutableArray<QueryKind> All { get; } =
    [
        .. FileQueries.Kinds,
        .. LockFileQueries.Kinds,
        .. EndingQueries.Kinds,
        .. ProtocolQueries.Kinds,
        .. CautionQueries.Kinds,
        .. HandlingQueries.Kinds,
        .. CsvQueries.Kinds,
        .. MessageQueries.Kinds,
        .. RowQueries.Kinds,
        .. SharedKinds.All,
        .. RaisedKinds.All,
    ];

    /// <summary>The table published as QUERIES.md.</summary>
    public static string ToMarkdown()
    {
        var text = new StringBuilder();
        text.Append("# Data queries\n\n");
        text.Append(
            "What reading and analyzing a study folder can ask. *Stop*: no report is made until it is answered. "
                + "*Attention*: stands on the first page of the report. *Note*: is listed in the report.\n\n"
        );
        text.Append("| code | severity | meaning | what to do |\n| --- | --- | --- | --- |\n");
        foreach (var kind in All)
        {
            text.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $"| `{kind.Code}` | {Name(kind.Severity)} | {kind.Meaning} | {kind.Remedy} |\n"
            );
        }

        return text.ToString();
    }

    private static string Name(Severity severity) =>
        severity switch
        {
            Severity.Note => "note",
            Severity.Attention => "attention",
            Severity.Stop => "stop",
        };
}
