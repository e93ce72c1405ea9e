using System.Collections.Immutable;
using StabilityStudy.SignedPdf.Objects;
using StabilityStudy.SignedPdf.Reading;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Compares a revision with the one before, object by object and by value. Common readers accept a later revision that paints over a
/// page, because the bytes signed before are still there; so everything but the traces of signing is a difference here.
/// </summary>
public static class RevisionComparison
{
    /// <summary>
    /// What was done besides filling one empty signature field: its entries /V and /AP, the new objects these lead to, and, with the
    /// first signature, the catalog's /Perms.
    /// </summary>
    /// <param name="before">The file as it ended with the earlier revision.</param>
    /// <param name="after">The file as it ends with the later one.</param>
    public static ImmutableArray<RevisionDifference> Compare(PdfDocument before, PdfDocument after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var old = before.Objects.ToDictionary(static found => found.Reference.Number);
        var now = after.Objects.ToDictionary(static found => found.Reference.Number);
        var filled = FilledField(before, after);
        var allowed = filled is null ? [] : NewObjectsOf(filled.Dictionary, after, old);
        var parts = new Lazy<(
            Dictionary<int, DocumentPart> Old,
            Dictionary<int, DocumentPart> New
        )>(() => (DocumentParts.Of(before), DocumentParts.Of(after)));

        RevisionDifference Difference(RevisionChange change, PdfReference reference, string? entry)
        {
            var (first, second) =
                change == RevisionChange.Added
                    ? (parts.Value.New, parts.Value.Old)
                    : (parts.Value.Old, parts.Value.New);
            var part =
                first.TryGetValue(reference.Number, out var found)
                || second.TryGetValue(reference.Number, out found)
                    ? found
                    : DocumentPart.Unreachable;
            return new RevisionDifference(change, part, reference, entry);
        }

        var differences = ImmutableArray.CreateBuilder<RevisionDifference>();
        if (TrailerEntry(before.Trailer, after.Trailer) is { } trailerEntry)
        {
            differences.Add(new(RevisionChange.Changed, DocumentPart.Trailer, null, trailerEntry));
        }

        foreach (var (number, previous) in old.OrderBy(static pair => pair.Key))
        {
            if (!now.TryGetValue(number, out var current))
            {
                differences.Add(Difference(RevisionChange.Removed, previous.Reference, null));
            }
            else if (
                current.Reference != previous.Reference
                || !ObjectEquality.AreEqual(
                    previous.Value,
                    WithoutSigning(current, previous.Value, after, filled)
                )
            )
            {
                differences.Add(
                    Difference(
                        RevisionChange.Changed,
                        previous.Reference,
                        FirstEntry(previous.Value, current.Value)
                    )
                );
            }
        }

        differences.AddRange(
            now.Values.Where(found =>
                    !old.ContainsKey(found.Reference.Number)
                    && !allowed.Contains(found.Reference.Number)
                )
                .OrderBy(static found => found.Reference.Number)
                .Select(found => Difference(RevisionChange.Added, found.Reference, null))
        );
        return differences.DrainToImmutable();
    }

    /// <summary>The first field, in the order of the form, that was empty before and is signed after.</summary>
    private static SignatureField? FilledField(PdfDocument before, PdfDocument after)
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
    private static PdfObject WithoutSigning(
        PdfIndirectObject current,
        PdfObject previous,
        PdfDocument after,
        SignatureField? filled
    )
    {
        if (
            filled is null
            || current.Value is not PdfDictionary now
            || previous is not PdfDictionary old
        )
        {
            return current.Value;
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

    /// <summary>Numbers of the new objects to which the field's signature and appearance lead.</summary>
    private static HashSet<int> NewObjectsOf(
        PdfDictionary field,
        PdfDocument after,
        Dictionary<int, PdfIndirectObject> old
    )
    {
        var reached = new HashSet<int>();
        var pending = new Stack<PdfObject?>([field.Find("V"), field.Find("AP")]);
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

    // Size and place of the section before follow from appending.
    private static string? TrailerEntry(PdfDictionary before, PdfDictionary after) =>
        FirstEntry(before.Without("Prev").Without("Size"), after.Without("Prev").Without("Size"));

    private static string? FirstEntry(PdfObject before, PdfObject after)
    {
        var (old, now) = (DictionaryOf(before), DictionaryOf(after));
        if (old is null || now is null)
        {
            return null;
        }

        return old
            .Entries.Concat(now.Entries)
            .Select(static entry => entry.Name)
            .Order(StringComparer.Ordinal)
            .FirstOrDefault(name => !ObjectEquality.AreEqual(old.Find(name), now.Find(name)));
    }

    private static PdfDictionary? DictionaryOf(PdfObject value) =>
        value switch
        {
            PdfDictionary dictionary => dictionary,
            PdfStream stream => stream.Dictionary,
            _ => null,
        };
}
