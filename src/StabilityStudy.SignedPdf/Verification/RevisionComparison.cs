using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.SignedPdf.Verification;

/// <summary>
/// Compares a revision with the one before, object by object and by value. Common readers accept a later revision that paints over a
/// page, because the bytes signed before are still there; so everything but the traces of signing is a difference here.
/// </summary>
internal static class RevisionComparison
{
    /// <summary>
    /// What was done besides filling one empty signature field: its entries /V and /AP, the new objects these lead to, and, with the
    /// first signature, the catalog's /Perms; or bringing a new store of validation data, which the catalog's /DSS names.
    /// </summary>
    /// <param name="before">The file as it ended with the earlier revision.</param>
    /// <param name="after">The file as it ends with the later one.</param>
    public static ImmutableArray<RevisionDifference> Compare(PdfDocument before, PdfDocument after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var old = before.Objects.ToDictionary(static found => found.Reference.Number);
        var now = after.Objects.ToDictionary(static found => found.Reference.Number);
        var filled = SigningTraces.FilledField(before, after);
        var allowed =
            filled is not null
                ? SigningTraces.NewObjectsOf(
                    [filled.Dictionary.Find("V"), filled.Dictionary.Find("AP")],
                    after,
                    old
                )
            : SigningTraces.StoreOf(before, after) is { } store
                ? SigningTraces.NewObjectsOf([store], after, old)
            : [];
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
                    SigningTraces.WithoutSigning(current, previous.Value, after, filled)
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
