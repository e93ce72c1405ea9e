namespace StabilityStudy.SignedPdf.Objects;

/// <summary>Compares objects by what they hold. References are equal when they name the same object; what that holds is not looked at.</summary>
internal static class ObjectEquality
{
    public static bool AreEqual(PdfObject? left, PdfObject? right) =>
        (left, right) switch
        {
            (null, null) => true,
            (PdfArray first, PdfArray second) => AreEqual(first.Items, second.Items),
            (PdfDictionary first, PdfDictionary second) => AreEqual(first, second),
            (PdfString first, PdfString second) => first
                .Bytes.AsSpan()
                .SequenceEqual(second.Bytes.AsSpan()),
            (PdfStream first, PdfStream second) => AreEqual(
                first.Dictionary.Without("Length"),
                second.Dictionary.Without("Length")
            ) && first.Encoded.Span.SequenceEqual(second.Encoded.Span),
            (not null, not null) => left.Equals(right),
            _ => false,
        };

    private static bool AreEqual(ImmutableArray<PdfObject> left, ImmutableArray<PdfObject> right)
    {
        if (left.Length != right.Length)
        {
            return false;
        }

        for (var i = 0; i < left.Length; i++)
        {
            if (!AreEqual(left[i], right[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool AreEqual(PdfDictionary left, PdfDictionary right)
    {
        if (left.Entries.Length != right.Entries.Length)
        {
            return false;
        }

        for (var i = 0; i < left.Entries.Length; i++)
        {
            var (first, second) = (left.Entries[i], right.Entries[i]);
            if (
                !string.Equals(first.Name, second.Name, StringComparison.Ordinal)
                || !AreEqual(first.Value, second.Value)
            )
            {
                return false;
            }
        }

        return true;
    }
}
