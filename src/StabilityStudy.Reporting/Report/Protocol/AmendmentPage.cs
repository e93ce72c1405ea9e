using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>The first page of an amendment: what it amends, why, and every change.</summary>
internal static class AmendmentPage
{
    private const int DigestShown = 16;

    public static Section Of(ProtocolAmendment amendment, ImmutableArray<Block> foot) =>
        new(
            "What is changed",
            StartsOnNewPage: true,
            [
                new Paragraph(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Reason: {RationaleWords.Unstopped(amendment.Reason)}. Made {amendment.Date:yyyy-MM-dd}."
                    ),
                    ParagraphStyle.Lead
                ),
                new Paragraph(
                    $"It amends the protocol of lock {NumberText.Count(amendment.EarlierLockNumber)} (SHA-256 of the protocol {Short(amendment.EarlierProtocolSha256)}, of the lock {Short(amendment.EarlierLockSha256)}{(amendment.EarlierDocumentSha256 is { } document ? $", of its signed document {Short(document)}" : "; no signed document of it was at hand")}). {AmendmentWords.Headline(amendment.Changes)}",
                    ParagraphStyle.Body
                ),
                new Table(
                    $"{TradeWords.Capital(Counted.Of(amendment.Changes.Length, "change"))} against lock {NumberText.Count(amendment.EarlierLockNumber)}, found by the program",
                    [
                        new Column("Place in the protocol", ColumnAlignment.Left, 2.6),
                        new Column("Before", ColumnAlignment.Left, 2.2),
                        new Column("Now", ColumnAlignment.Left, 2.2),
                    ],
                    [
                        .. amendment.Changes.Select(change => new Row([
                            new TableCell($"{change.Meaning} ({change.Key})"),
                            new TableCell(change.Before ?? "not stated"),
                            new TableCell(change.After ?? "taken away"),
                        ])),
                    ],
                    amendment.Changes.IsEmpty
                        ? "Nothing but remarks and the layout of the file differs."
                        : "Values as they stand in protocol.toml. Remarks and the layout of the file are not compared."
                ),
            ]
        )
        {
            Foot = foot,
        };

    private static string Short(string sha256) =>
        sha256.Length > DigestShown ? sha256[..DigestShown] : sha256;
}
