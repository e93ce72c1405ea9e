using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Signing;

/// <summary>A drawn document with two fields, unsigned and signed.</summary>
internal static class SignedDocument
{
    public static StampFont Font { get; } =
        Rewritten.Value(StampFont.Read(TestData.Read("sample-font.ttf")));

    public static byte[] Unsigned { get; } = Reserved(DrawnDocument.Draw(pages: 2));

    public static byte[] SignedOnce { get; } = Sign(Unsigned, Author);

    public static byte[] SignedTwice { get; } = Sign(SignedOnce, Approver);

    /// <summary>A document of three small objects, so that each byte of its signed copy can be tried.</summary>
    public static byte[] Small { get; } = Reserved(HandMade);

    /// <summary>Three small objects without fields.</summary>
    public static byte[] HandMade =>
        HandMadePdf.Of(
            "<</Type/Catalog/Pages 2 0 R>>",
            "<</Type/Pages/Kids[3 0 R]/Count 1>>",
            "<</Type/Page/Parent 2 0 R/MediaBox[0 0 600 800]/Contents 4 0 R>>",
            "<</Length 18>>stream\n0 0 100 100 re f  \nendstream"
        );

    public static SignatureRequest Author =>
        Request(
            "author",
            Signers.Author.SigningKey(Signers.Authority),
            "Ada Author",
            "I have carried out the study"
        );

    public static SignatureRequest Approver =>
        Request("approver", Signers.Approver.SigningKey(), "Boris Approver", "I approve") with
        {
            SigningTime = Signers.Time.AddHours(2),
            Statement = """{"decision":"approve"}""",
            Location = null,
        };

    public static byte[] Reserved(byte[] drawn, params ReservedField[] more) =>
        Rewritten.Of(
            drawn,
            Rewritten.Options with
            {
                Fields =
                [
                    new("author", 1, new(50, 500, 250, 560), "Signature of the author"),
                    new("approver", 1, new(300.5, 500, 500, 560), "Signature of the approver"),
                    .. more,
                ],
            }
        );

    public static SignatureRequest Request(
        string field,
        SigningKey key,
        string name,
        string reason
    ) =>
        new(
            field,
            key,
            Signers.Time,
            name,
            reason,
            "Trial laboratory",
            null,
            new SignatureStamp(
                Font,
                [
                    new StampLine(name, 10),
                    new StampLine(reason + " ✓", 8),
                    new StampLine("2026-03-04 09:30 -05:00", 8),
                ]
            ),
            null
        );

    public static byte[] Sign(byte[] document, SignatureRequest request)
    {
        var result = request.Sign(document);
        Assert.True(result.TryGet(out var signed, out var refusal), refusal?.ToString());
        return signed.ToArray();
    }

    public static SigningRefusalReason Refusal(byte[] document, SignatureRequest request)
    {
        Assert.False(request.Sign(document).TryGet(out _, out var refusal));
        return refusal.Reason;
    }

    public static DocumentVerification Verify(byte[] document) =>
        Verify(document, Signers.Trusting);

    public static DocumentVerification Verify(byte[] document, VerificationOptions options) =>
        SignatureVerifier.Verify(document, options);
}
