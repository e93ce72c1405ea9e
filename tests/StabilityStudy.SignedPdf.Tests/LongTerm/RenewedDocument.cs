using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.LongTerm;

/// <summary>A document with room for archive time stamps, signed by two people whose certificates end in 2028, and renewed.</summary>
internal static class RenewedDocument
{
    public static DateTimeOffset FirstRenewal { get; } = Signers.Time.AddDays(20);

    public static Signer Author { get; } =
        Signers.Issue("Ada Author", rsa: false, to: new(2028, 1, 1, 0, 0, 0, TimeSpan.Zero));

    /// <summary>Its certificate ends in 2035.</summary>
    public static Signer FirstAuthority { get; } = Authority("First Time", 2035);

    public static Signer SecondAuthority { get; } = Authority("Second Time", 2055);

    public static byte[] Unsigned { get; } =
        SignedDocument.Reserved(DrawnDocument.Draw(pages: 2), [.. ArchiveFields.Reserved]);

    public static byte[] Signed { get; } =
        SignedDocument.Sign(Unsigned, SignedDocument.Author with { Key = Author.SigningKey() });

    /// <summary>The list of the authority, made a day before the first renewal; it revokes nobody.</summary>
    public static byte[] List { get; } =
        Signers.RevocationListOf(FirstRenewal.AddDays(-1), FirstRenewal);

    public static VerificationOptions Trusting(DateTimeOffset now, params byte[][] lists) =>
        Signers.Trusting with
        {
            Now = now,
            RevocationLists = [.. lists.Select(list => Rewritten.Value(RevocationList.Read(list)))],
        };

    /// <summary>Data and archive time stamp by the first authority.</summary>
    public static byte[] Renewed { get; } =
        Renew(
            Signed,
            Trusting(FirstRenewal, List),
            new HandMadeStamp(FirstRenewal) { Authority = FirstAuthority }.Source
        );

    /// <summary>The same of a document of three small objects.</summary>
    public static byte[] Small { get; } =
        Renew(
            SignedDocument.Sign(
                SignedDocument.Reserved(SignedDocument.HandMade, [.. ArchiveFields.Reserved]),
                SignedDocument.Author with
                {
                    Key = Author.SigningKey(),
                }
            ),
            Trusting(FirstRenewal, List),
            new HandMadeStamp(FirstRenewal) { Authority = FirstAuthority }.Source
        );

    public static byte[] Renew(
        byte[] document,
        VerificationOptions options,
        TimeStampSource? source
    )
    {
        var result = PdfRenewal.Renew(document, options, source);
        Assert.True(result.TryGet(out var renewed, out var refusal), $"{refusal} {result.What}");
        return renewed.ToArray();
    }

    private static Signer Authority(string name, int year) =>
        Signers.Issue(
            name,
            rsa: false,
            to: new(year, 1, 1, 0, 0, 0, TimeSpan.Zero),
            purpose: HandMadeStamp.TimeStamping
        );
}
