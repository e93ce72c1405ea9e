using StabilityStudy.SignedPdf.LongTerm;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>Tells what signing itself changes in a document.</summary>
internal static class SigningTraces
{
    /// <summary>The first field, in the order of the form, that was empty before and is signed after.</summary>
    public static SignatureField? FilledField(PdfDocument before, PdfDocument after)
    {
        if (
            SignatureForm.Fields(before) is not { } old
            || SignatureForm.Fields(after) is not { } now
        )
        {
            return null;
        }

        var empty = old.Where(static field =>
                field.Reference is not null && field.Dictionary.Find("V") is null
            )
            .Select(static field => field.Reference)
            .ToHashSet();
        return now.FirstOrDefault(field =>
            field is { Reference: not null, ValueReference: not null, Value: not null }
            && empty.Contains(field.Reference)
        );
    }

    /// <summary>The object with what signing changed set back; anything else stays, and so is seen.</summary>
    public static PdfObject WithoutSigning(
        PdfIndirectObject current,
        PdfObject previous,
        PdfDocument after,
        SignatureField? filled
    )
    {
        if (current.Value is not PdfDictionary now || previous is not PdfDictionary old)
        {
            return current.Value;
        }

        if (filled is null)
        {
            return
                current.Reference.Equals(after.Trailer.Find("Root"))
                && now.Find(ValidationStore.Entry) is PdfReference
                ? old.Find(ValidationStore.Entry) is { } store
                    ? now.With(ValidationStore.Entry, store)
                    : now.Without(ValidationStore.Entry)
                : now;
        }

        if (current.Reference == filled.Reference)
        {
            now = now.Without("V").Without("AP");
            return old.Find("AP") is { } appearance ? now.With("AP", appearance) : now;
        }

        var permissions = now.Find("Perms");
        return
            current.Reference.Equals(after.Trailer.Find("Root"))
            && old.Find("Perms") is null
            && permissions is PdfDictionary { Entries: [{ Name: "DocMDP" } only] }
            && only.Value.Equals(filled.ValueReference)
            ? now.Without("Perms")
            : now;
    }

    /// <summary>The store of validation data that the later file names and the earlier one does not have; null where there is none, or a field was filled.</summary>
    public static PdfReference? StoreOf(PdfDocument before, PdfDocument after) =>
        FilledField(before, after) is null
        && after.Catalog.Find(ValidationStore.Entry) is PdfReference store
        && before.Find(store) is null
            ? store
            : null;

    /// <summary>Numbers of the new objects to which these values lead.</summary>
    public static HashSet<int> NewObjectsOf(
        ReadOnlySpan<PdfObject?> from,
        PdfDocument after,
        Dictionary<int, PdfIndirectObject> old
    )
    {
        var reached = new HashSet<int>();
        var pending = new Stack<PdfObject?>(from.ToArray());
        while (pending.TryPop(out var next))
        {
            switch (next)
            {
                case PdfReference reference
                    when !old.ContainsKey(reference.Number) && reached.Add(reference.Number):
                    pending.Push(after.Find(reference));
                    break;
                case PdfArray array:
                    foreach (var item in array.Items)
                    {
                        pending.Push(item);
                    }

                    break;
                case PdfStream stream:
                    pending.Push(stream.Dictionary);
                    break;
                case PdfDictionary dictionary:
                    foreach (var entry in dictionary.Entries)
                    {
                        pending.Push(entry.Value);
                    }

                    break;
                default:
                    break;
            }
        }

        return reached;
    }
}
