namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>What is needed to judge signatures when nobody can be asked any more: certificates, lists of revoked ones and answers about single ones, each in DER.</summary>
/// <param name="Certificates">Certificates of signers, authorities and those that vouch for them.</param>
/// <param name="RevocationLists">Lists of revoked certificates.</param>
/// <param name="Answers">Answers about single certificates (OCSP).</param>
internal sealed record ValidationData(
    ImmutableArray<ReadOnlyMemory<byte>> Certificates,
    ImmutableArray<ReadOnlyMemory<byte>> RevocationLists,
    ImmutableArray<ReadOnlyMemory<byte>> Answers
)
{
    public static ValidationData None { get; } = new([], [], []);

    public bool IsEmpty => Certificates.IsEmpty && RevocationLists.IsEmpty && Answers.IsEmpty;

    /// <summary>What is not in the other.</summary>
    public ValidationData Without(ValidationData other) =>
        new(
            Without(Certificates, other.Certificates),
            Without(RevocationLists, other.RevocationLists),
            Without(Answers, other.Answers)
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
