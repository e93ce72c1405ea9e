using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Writing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Whether an appended revision has the one form that signing gives it, or the one that adding validation data does. Its objects are written again from what was read, and the bytes compared: so nothing stands between, before or behind them that
/// another reader could show. That proves form, not meaning.
/// </summary>
internal static class RevisionForm
{
    /// <summary>Whether the later file is the earlier one with a revision as the program appends it.</summary>
    /// <param name="before">The file as it ended with the revision before.</param>
    /// <param name="after">The file as it ends with this revision.</param>
    public static bool IsOurs(PdfDocument before, PdfDocument after) =>
        IsSigned(before, after) || ValidationStore.IsAppended(before, after);

    private static bool IsSigned(PdfDocument before, PdfDocument after)
    {
        var values = after.Objects.ToDictionary(static found => found.Reference.Number);
        var numbers = after.Revisions[^1].Numbers;
        if (numbers.IsEmpty || !numbers.All(values.ContainsKey))
        {
            return false;
        }

        ImmutableArray<PdfIndirectObject> objects = [.. numbers.Select(number => values[number])];
        if (
            objects[^1] is not { Value: PdfDictionary signature, Reference.Number: var number }
            || signature.Find("Contents")
                is not PdfString { Bytes.Length: SignatureDictionary.ContentsLength } contents
        )
        {
            return false;
        }

        var bytes = PdfFileWriter.Append(
            before,
            objects.SetItem(
                objects.Length - 1,
                objects[^1] with
                {
                    Value = SignatureDictionary.Emptied(signature),
                }
            )
        );
        if (SignaturePlaceholder.Find(bytes, number) is not { } place)
        {
            return false;
        }

        place.WriteRange(bytes);
        place.WriteSignature(bytes, contents.Bytes.AsSpan());
        return after.Bytes.Span.SequenceEqual(bytes);
    }
}
