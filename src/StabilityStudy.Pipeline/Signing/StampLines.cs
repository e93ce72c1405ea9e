using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Fonts;
using StabilityStudy.Reporting.Report.Decision;
using StabilityStudy.Reporting.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>What the stamp of a signature says to people.</summary>
internal static class StampLines
{
    private const double NameSize = 9;
    private const double LineSize = 7.5;
    private const double SmallSize = 6.5;
    private const double RowSize = 7;
    private const double WindowSize = 11;
    private const double LeastForThreeLines = 34;

    /// <summary>Letters of a line that fit the narrowest field, three in a row, without making the stamp smaller.</summary>
    private const int LettersInLine = 44;

    private static readonly Lazy<StampFont> s_font = new(() =>
        StampFont.Read(ReportFonts.StampFontFile).TryGet(out var font, out var failure)
            ? font
            : throw new InvalidOperationException("The stamp's font: " + failure.What)
    );

    /// <summary>The stamp of what is signed, as the form of the statement has it.</summary>
    /// <param name="protocol">The protocol of the study; needed for a decision alone.</param>
    /// <param name="signatory">Who signs, as the protocol names it.</param>
    /// <param name="name">Printed name.</param>
    /// <param name="at">Time of signing.</param>
    /// <param name="statement">What is signed.</param>
    /// <param name="certificate">The certificate of whoever signs.</param>
    /// <param name="field">The place on the page.</param>
    /// <param name="areas">The places inside it: of the decision on each row, and last of all else; empty in a field that is one place.</param>
    public static SignatureStamp Stamp(
        StudyProtocol? protocol,
        Signatory signatory,
        string name,
        DateTimeOffset at,
        SignedStatement statement,
        CertificateFacts certificate,
        PageRectangle field,
        ImmutableArray<PageRectangle> areas
    )
    {
        return statement.Format == SignedStatement.FormatWithoutRows
                ? new(s_font.Value, WithoutRows(signatory, name, at, statement, certificate))
            : areas is [.. var cells, var box]
            && statement.Decision is { } decision
            && decision.Windows.Length == cells.Length
                ? new(s_font.Value, Of(box, rowsApart: true))
                {
                    Box = box,
                    Parts = [.. decision.Windows.Zip(cells, Cell)],
                }
            : new(s_font.Value, Of(field, rowsApart: false));

        ImmutableArray<StampLine> Of(PageRectangle place, bool rowsApart) =>
            WithRows(
                protocol,
                signatory,
                name,
                at,
                statement,
                certificate,
                SignatureStamp.LineWidthIn(place),
                rowsApart
            );
    }

    /// <summary>The decision on a row at its place in the table; in one line where the row has no more.</summary>
    private static StampPart Cell(WindowDecision window, PageRectangle area)
    {
        var (label, decided, beside) = DecisionWords.Cell(window);
        var width = SignatureStamp.LineWidthIn(area);
        return new StampPart(
            area,
            area.Height < LeastForThreeLines
                ?
                [
                    new StampLine(
                        $"{decided}{(beside.Length == 0 ? "" : $", {beside}")}",
                        SmallSize
                    ),
                ]
                :
                [
                    new StampLine(label, SmallSize),
                    .. s_font
                        .Value.Wrap(decided, WindowSize, width)
                        .Select(line => new StampLine(line, WindowSize)),
                    .. beside.Length == 0
                        ? []
                        : s_font
                            .Value.Wrap(beside, SmallSize, width)
                            .Select(line => new StampLine(line, SmallSize)),
                ]
        );
    }

    /// <summary>How many letters of running text must go so that the stamp fits, as far as its own lines tell.</summary>
    public static int LettersTooMany(SignatureStamp stamp, PageRectangle field)
    {
        var longest = stamp.Lines.Max(line => line.Text.Length);
        var fewest = stamp.Lines.Length;
        while (fewest > 1 && !(stamp with { Lines = stamp.Lines[..fewest] }).FitsIn(field))
        {
            fewest--;
        }

        return (stamp.Lines.Length - fewest) * longest;
    }

    /// <summary>Who, as what, the decision row by row with its terms, when, and who vouches for the name; lines as wide as the field.</summary>
    private static ImmutableArray<StampLine> WithRows(
        StudyProtocol? protocol,
        Signatory signatory,
        string name,
        DateTimeOffset at,
        SignedStatement statement,
        CertificateFacts certificate,
        double width,
        bool rowsApart
    )
    {
        var lines = ImmutableArray.CreateBuilder<StampLine>();
        Add(NameOf(name, statement), NameSize);
        Add(SignatoryFields.MeaningOf(signatory), RowSize);
        if (statement.Decision is { } decision)
        {
            Add(DecisionWords.Headline(decision), RowSize);
            ImmutableArray<string> rows =
                rowsApart || protocol is null ? [] : [.. DecisionWords.Rows(protocol, decision)];
            foreach (
                var row in rows.Length > SignatureRoom.MostRowsApart
                    ? [string.Join(" · ", rows)]
                    : rows
            )
            {
                Add(row, RowSize);
            }

            foreach (var term in DecisionWords.Terms(decision))
            {
                Add(term, RowSize);
            }
        }

        Add(Signed(at), RowSize);
        if (Accepted(statement) is { } accepted)
        {
            Add(accepted, SmallSize);
        }

        if (statement.RecordSha256 is { } record)
        {
            Add(
                $"The study's record ended with {record[..Math.Min(16, record.Length)]}",
                SmallSize
            );
        }

        Add(Vouching(name, certificate), SmallSize);
        return lines.ToImmutable();

        void Add(string text, double size) =>
            lines.AddRange(
                s_font.Value.Wrap(text, size, width).Select(line => new StampLine(line, size))
            );
    }

    /// <summary>The form of statements without rows: lines of a fixed number of letters.</summary>
    private static ImmutableArray<StampLine> WithoutRows(
        Signatory signatory,
        string name,
        DateTimeOffset at,
        SignedStatement statement,
        CertificateFacts certificate
    )
    {
        var lines = ImmutableArray.CreateBuilder<StampLine>();
        lines.Add(new StampLine(NameOf(name, statement), NameSize));
        Add(SignatoryFields.MeaningOf(signatory), LineSize);
        if (statement.Decision is { } decision)
        {
            Add(DecisionWords.Headline(decision), LineSize);
        }

        lines.Add(new StampLine(Signed(at), LineSize));
        if (Accepted(statement) is { } accepted)
        {
            Add(accepted, SmallSize);
        }

        lines.Add(new StampLine(Vouching(name, certificate), SmallSize));
        return lines.ToImmutable();

        void Add(string text, double size) =>
            lines.AddRange(
                TextLines.Wrap(text, LettersInLine).Select(line => new StampLine(line, size))
            );
    }

    private static string NameOf(string name, SignedStatement statement) =>
        name + (statement.Credentials is { } given ? ", " + given : "");

    private static string Signed(DateTimeOffset at) =>
        "Signed " + at.ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture);

    private static string? Accepted(SignedStatement statement) =>
        statement.AcceptedNotRecomputed switch
        {
            [] => null,
            [var first, .. var further] =>
                $"Signed with version {statement.ToolVersion}; accepted as not computed again: {first}"
                    + (
                        further.IsEmpty
                            ? ""
                            : FormattableString.Invariant($" and {further.Length} further items")
                    ),
        };

    private static string Vouching(string name, CertificateFacts certificate) =>
        certificate.IsSelfIssued
            ? $"Self-issued certificate{OwnName(name, certificate)}: nobody else vouches for the name"
            : $"Certificate of {certificate.Name}, number {certificate.SerialNumber}";

    /// <summary>The printed name is what the signer says; where the certificate has another, it stands beside.</summary>
    private static string OwnName(string name, CertificateFacts certificate) =>
        name == certificate.Name ? "" : $" of {certificate.Name}";
}
