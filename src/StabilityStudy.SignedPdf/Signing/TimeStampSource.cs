namespace StabilityStudy.SignedPdf.Signing;

/// <summary>Where a time stamp comes from (RFC 3161).</summary>
/// <param name="Ask">Sends a request (DER) to the authority and gives its response (DER); null when there is none.</param>
/// <param name="Nonce">At least 8 bytes by chance, which tie the response to the request.</param>
public sealed record TimeStampSource(
    Func<ReadOnlyMemory<byte>, ReadOnlyMemory<byte>?> Ask,
    ReadOnlyMemory<byte> Nonce
);
