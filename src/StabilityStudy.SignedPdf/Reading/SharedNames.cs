namespace StabilityStudy.SignedPdf.Reading;

/// <summary>
/// Gives one object for a name that comes again and again: a tagged report holds hundreds of thousands of names, of which about a hundred
/// differ. It remembers one name a slot, the latest, so that a file of ever new names costs no memory.
/// </summary>
internal sealed class SharedNames
{
    private const int Slots = 256;
    private PdfName?[]? _names;

    /// <summary>The name with these characters.</summary>
    public PdfName Of(ReadOnlySpan<char> value)
    {
        _names ??= new PdfName?[Slots];
        ref var slot = ref _names[
            string.GetHashCode(value, StringComparison.Ordinal) & (Slots - 1)
        ];
        return slot is not null && value.SequenceEqual(slot.Value)
            ? slot
            : slot = new PdfName(value.ToString());
    }
}
