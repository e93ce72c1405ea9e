namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>What is needed to judge signatures when nobody can be asked any more: certificates and lists of revoked ones, each in DER.</summary>
/// <param name="Certificates">Certificates of signers, authorities and those that vouch for them.</param>
/// <param name="RevocationLists">Lists of revoked certificates.</param>
internal sealed record ValidationData(
    ImmutableArray<ReadOnlyMemory<byte>> Certificates,
    ImmutableArray<ReadOnlyMemory<byte>> RevocationLists
)
{
    public static ValidationData None { get; } = new([], []);

    public bool IsEmpty => Certificates.IsEmpty && RevocationLists.IsEmpty;

    /// <summary>What is not in the other.</summary>
    public ValidationData Without(ValidationData other) =>
        new(
            Without(Certificates, other.Certificates),
            Without(RevocationLists, other.RevocationLists)
        );

    private static ImmutableArray<ReadOnlyMemory<byte>> Without(
        ImmutableArray<ReadOnlyMemory<byte>> items,
        ImmutableArray<ReadOnlyMemory<byte>> others
    )
    {
        var kept = ImmutableArray.CreateBuilder<ReadOnlyMemory<byte>>();
        foreach (var item in items)
        {
            if (!others.Concat(kept).Any(other => other.Span.SequenceEqual(item.Span)))
            {
                kept.Add(item);
            }
        }

        return kept.DrainToImmutable();
    }
}
