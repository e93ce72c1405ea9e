using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Fonts;
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

    /// <summary>Letters of a line that fit the narrowest field, three in a row, without making the stamp smaller.</summary>
    private const int LettersInLine = 44;

    private static readonly Lazy<StampFont> s_font = new(() =>
        StampFont.Read(ReportFonts.StampFontFile).TryGet(out var font, out var failure)
            ? font
            : throw new InvalidOperationException("The stamp's font: " + failure.What)
    );

    /// <summary>The stamp of what is signed.</summary>
    public static SignatureStamp Stamp(
        Signatory signatory,
        string name,
        DateTimeOffset at,
        SignedStatement statement,
        CertificateFacts certificate
    ) => new(s_font.Value, Of(signatory, name, at, statement, certificate));

    /// <summary>The lines of the stamp: who, as what, the decision, when, and who vouches for the name.</summary>
    private static ImmutableArray<StampLine> Of(
        Signatory signatory,
        string name,
        DateTimeOffset at,
        SignedStatement statement,
        CertificateFacts certificate
    )
    {
        var lines = ImmutableArray.CreateBuilder<StampLine>();
        var accepted = statement.AcceptedNotRecomputed;
        var credentials = statement.Credentials is { } given ? ", " + given : "";
        lines.Add(new StampLine(name + credentials, NameSize));
        lines.AddRange(
            TextLines
                .Wrap(SignatoryFields.MeaningOf(signatory), LettersInLine)
                .Select(line => new StampLine(line, LineSize))
        );
        if (statement.Decision is { } decision)
        {
            lines.AddRange(
                TextLines
                    .Wrap(decision.InWords(), LettersInLine)
                    .Select(line => new StampLine(line, LineSize))
            );
        }

        lines.Add(
            new StampLine(
                "Signed " + at.ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture),
                LineSize
            )
        );
        if (!accepted.IsEmpty)
        {
            var further =
                accepted.Length == 1
                    ? ""
                    : FormattableString.Invariant($" and {accepted.Length - 1} further items");
            lines.AddRange(
                TextLines
                    .Wrap(
                        $"Signed with version {statement.ToolVersion}; accepted as not computed again: {accepted[0]}{further}",
                        LettersInLine
                    )
                    .Select(line => new StampLine(line, SmallSize))
            );
        }

        lines.Add(new StampLine(Vouching(name, certificate), SmallSize));
        return lines.ToImmutable();
    }

    private static string Vouching(string name, CertificateFacts certificate) =>
        certificate.IsSelfIssued
            ? $"Self-issued certificate{OwnName(name, certificate)}: nobody else vouches for the name"
            : $"Certificate of {certificate.Name}, number {certificate.SerialNumber}";

    /// <summary>The printed name is what the signer says; where the certificate has another, it stands beside.</summary>
    private static string OwnName(string name, CertificateFacts certificate) =>
        name == certificate.Name ? "" : $" of {certificate.Name}";
}
