namespace StabilityStudy.SignedPdf.Reading;

/// <summary>
/// What one reading of a file may make of it: so many objects and no more, since a file can be packed so that each of its bytes becomes
/// a thousand objects. Gives one object for a name that comes again and again: a tagged report holds hundreds of thousands of names, of which about a hundred
/// differ. It remembers one name a slot, the latest, so that a file of ever new names costs no memory.
/// </summary>
internal sealed class ValueBudget
{
    private const int Slots = 256;
    private PdfName?[]? _names;
    private int _left = ReadingLimits.Values;

    /// <summary>Whether one more object may be made.</summary>
    public bool TryTake() => --_left >= 0;

    /// <summary>The name with these characters.</summary>
    public PdfName NameOf(ReadOnlySpan<char> value)
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
