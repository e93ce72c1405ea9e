using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>
/// Makes the signatures of a document outlast their certificates: keeps in it what is needed to judge them (PAdES B-LT) and dates all of it by an archive time stamp (B-LTA; ETSI EN 319 142-1, clause 5.4). Each
/// is a revision of its own; the bytes before stay as they are.
/// </summary>
public static class PdfRenewal
{
    /// <summary>The document with more proof, or why there is none. What comes out has passed <see cref="SignatureVerifier"/>.</summary>
    /// <param name="document">The bytes of the whole document, signed.</param>
    /// <param name="options">Who is trusted, and the lists of revoked certificates to be kept.</param>
    /// <param name="source">Where an archive time stamp comes from; null for none.</param>
    public static RenewalResult Renew(
        ReadOnlyMemory<byte> document,
        VerificationOptions options,
        TimeStampSource? source
    )
    {
        ArgumentNullException.ThrowIfNull(options);
        var found = SignatureVerifier.Verify(document, options);
        if (!found.Holds)
        {
            return new(RenewalRefusal.DoesNotVerify, VerificationText.FirstFault(found));
        }

        var chains = Chains(found);
        if (chains.Any(static chain => chain.Outcome != ChainOutcome.Trusted))
        {
            return new(RenewalRefusal.NotTrusted, "");
        }

        var bytes = document;
        var needed = Needed(chains, options).Without(ValidationStore.Read(Read(bytes)));
        if (needed.IsEmpty && source is null)
        {
            return new(RenewalRefusal.NothingToAdd, "");
        }

        if (!needed.IsEmpty)
        {
            if (found.Revisions[^1].BringsValidationData)
            {
                return new(RenewalRefusal.DataNotStamped, "");
            }

            bytes = ValidationStore.Append(Read(bytes), needed);
        }

        if (source is not null)
        {
            if (ArchiveTimeStamp.FreeField(Read(bytes)) is not { } field)
            {
                return new(RenewalRefusal.NoRoom, "");
            }

            var stamped = ArchiveTimeStamp.Append(Read(bytes), field, out var number);
            if (Fill(stamped, number, source) is { } refused)
            {
                return refused;
            }

            bytes = stamped;
        }

        var renewed = SignatureVerifier.Verify(bytes, options);
        return renewed.Holds
            ? new RenewalResult(
                bytes,
                keepsMore: !needed.IsEmpty,
                source is null ? null : renewed.ArchiveTimeStamps[^1].TimeStamp
            )
            : new(RenewalRefusal.DoesNotVerify, VerificationText.FirstFault(renewed));
    }

    private static PdfDocument Read(ReadOnlyMemory<byte> bytes) =>
        PdfDocumentReader.Read(bytes).TryGet(out var read, out _)
            ? read
            : throw new InvalidOperationException("A document that was verified cannot be read.");

    private static ImmutableArray<ChainVerification> Chains(DocumentVerification found) =>
        [
            .. found.Signatures.Select(static signature => signature.Chain),
            .. found
                .Signatures.Select(static signature => signature.TimeStamp)
                .Concat(found.ArchiveTimeStamps.Select(static stamp => stamp.TimeStamp))
                .OfType<TimeStampVerification>()
                .Select(static stamp => stamp.Chain),
        ];

    /// <summary>The certificates of the chains, and the given lists and answers that their issuers made about them.</summary>
    private static ValidationData Needed(
        ImmutableArray<ChainVerification> chains,
        VerificationOptions options
    )
    {
        var pairs = chains
            .SelectMany(static chain => chain.Elements.Zip(chain.Elements.Skip(1)))
            .ToList();
        var statements = options
            .RevocationLists.Where(statement =>
                pairs.Exists(pair => statement.ProblemAgainst(pair.First, pair.Second) is null)
            )
            .ToLookup(
                static statement => statement is RevocationAnswer,
                static statement => statement.Encoded
            );
        return new ValidationData(
            [
                .. chains
                    .SelectMany(static chain => chain.Elements)
                    .Select(static certificate => certificate.RawDataMemory),
            ],
            [.. statements[false]],
            [.. statements[true]]
        ).Without(ValidationData.None);
    }

    private static RenewalResult? Fill(byte[] bytes, int number, TimeStampSource source)
    {
        var place =
            SignaturePlaceholder.Find(bytes, number)
            ?? throw new InvalidOperationException("The place of the time stamp was not found.");
        place.WriteRange(bytes);
        if (TimeStampToken.Over(place.Covered(bytes), source, out var fault) is not { } token)
        {
            return fault is null
                ? new(RenewalRefusal.TimeStampUnavailable, "")
                : new(RenewalRefusal.TimeStampInvalid, fault);
        }

        if (token.Length > SignatureDictionary.ContentsLength)
        {
            return new(RenewalRefusal.TimeStampTooLarge, "");
        }

        place.WriteSignature(bytes, token);
        return null;
    }
}
