namespace StabilityStudy.SignedPdf.Objects;

/// <summary>A table from names to objects (ISO 32000-1:2008, 7.3.7), always in ordinal order of the names.</summary>
public sealed record PdfDictionary : PdfObject
{
    private PdfDictionary(ImmutableArray<PdfEntry> entries) => Entries = entries;

    /// <summary>A dictionary without entries.</summary>
    public static PdfDictionary Empty { get; } = new([]);

    /// <summary>The entries in ordinal order of their names.</summary>
    public ImmutableArray<PdfEntry> Entries { get; }

    /// <summary>Makes a dictionary of entries in any order.</summary>
    /// <exception cref="ArgumentException">A name occurs twice.</exception>
    public static PdfDictionary Of(params ReadOnlySpan<PdfEntry> entries) =>
        TryOf([.. entries]) ?? throw new ArgumentException("A name occurs twice.", nameof(entries));

    /// <summary>The value under a name; null when there is no such entry.</summary>
    public PdfObject? Find(string name)
    {
        var index = IndexOf(name);
        return index < 0 ? null : Entries[index].Value;
    }

    /// <summary>The same dictionary with this entry, in place of the one under the same name if there is one.</summary>
    public PdfDictionary With(string name, PdfObject value)
    {
        var index = IndexOf(name);
        var entry = new PdfEntry(name, value);
        return new(index < 0 ? Entries.Insert(~index, entry) : Entries.SetItem(index, entry));
    }

    /// <summary>The same dictionary without the entry under this name.</summary>
    public PdfDictionary Without(string name)
    {
        var index = IndexOf(name);
        return index < 0 ? this : new(Entries.RemoveAt(index));
    }

    /// <summary>
    /// The dictionary with each value changed, without the entries whose value becomes the null object; itself where nothing changes, so
    /// that the copies of a document share what they have in common.
    /// </summary>
    internal PdfDictionary MapValues(Func<PdfObject, PdfObject> change)
    {
        var entries = Entries.ToBuilder();
        var isChanged = false;
        for (var i = 0; i < entries.Count; i++)
        {
            var value = change(entries[i].Value);
            isChanged |= !ReferenceEquals(value, entries[i].Value);
            entries[i] = entries[i] with { Value = value };
        }

        entries.RemoveAll(static entry => entry.Value is PdfNull);
        return isChanged || entries.Count < Entries.Length ? new(entries.ToImmutable()) : this;
    }

    /// <summary>Sorts the entries (in place); null when a name occurs twice.</summary>
    internal static PdfDictionary? TryOf(List<PdfEntry> entries)
    {
        entries.Sort(static (x, y) => string.CompareOrdinal(x.Name, y.Name));
        for (var i = 1; i < entries.Count; i++)
        {
            if (string.Equals(entries[i - 1].Name, entries[i].Name, StringComparison.Ordinal))
            {
                return null;
            }
        }

        return entries.Count == 0 ? Empty : new([.. entries]);
    }

    private int IndexOf(string name)
    {
        var low = 0;
        var high = Entries.Length - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = string.CompareOrdinal(Entries[middle].Name, name);
            if (order == 0)
            {
                return middle;
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return ~low;
    }
}
