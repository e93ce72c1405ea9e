namespace StabilityStudy.SignedPdf.Reading;

/// <summary>
/// A place in bytes being parsed, and the first thing found wrong there. Nothing is thrown: a method that cannot go on
/// records the failure and returns null or false, and its caller returns at once.
/// </summary>
internal sealed class PdfCursor(ReadOnlyMemory<byte> bytes, int start, ValueBudget? values = null)
{
    public ReadOnlyMemory<byte> Bytes { get; } = bytes;

    public int Position { get; set; } = start;

    public PdfFailure? Failure { get; private set; }

    /// <summary>What may be made of the bytes.</summary>
    public ValueBudget Values { get; } = values ?? new();

    private ReadOnlySpan<byte> Rest => Bytes.Span[Position..];

    /// <summary>The byte at a distance from here; -1 beyond the end.</summary>
    public int Peek(int ahead = 0) =>
        ahead < Bytes.Length - Position ? Bytes.Span[Position + ahead] : -1;

    /// <summary>Records a failure at this place unless one is recorded already.</summary>
    public bool Fail(string what)
    {
        Failure ??= new PdfFailure(Position, what);
        return false;
    }

    /// <summary>Skips white space and comments (ISO 32000-1:2008, 7.2.3).</summary>
    public void SkipWhitespace()
    {
        var span = Bytes.Span;
        var position = Position;
        while (position < span.Length)
        {
            if (span[position] == '%')
            {
                var end = span[position..].IndexOfAny((byte)'\r', (byte)'\n');
                position = end < 0 ? span.Length : position + end;
            }
            else if (PdfCharacter.IsWhitespace(span[position]))
            {
                position++;
            }
            else
            {
                break;
            }
        }

        Position = position;
    }

    /// <summary>Steps over a word that stands here and is not part of a longer one.</summary>
    public bool TryTake(ReadOnlySpan<byte> word)
    {
        if (!Rest.StartsWith(word) || PdfCharacter.IsRegular(Peek(word.Length)))
        {
            return false;
        }

        Position += word.Length;
        return true;
    }

    /// <summary>Steps over a word that must stand here.</summary>
    public bool Take(ReadOnlySpan<byte> word, string what) => TryTake(word) || Fail(what);

    /// <summary>Steps over one end of line; a lone carriage return counts only when <paramref name="loneReturn"/> says so.</summary>
    public bool TryTakeEndOfLine(bool loneReturn)
    {
        var length = (Peek(), Peek(1)) switch
        {
            ('\r', '\n') => 2,
            ('\n', _) => 1,
            ('\r', _) when loneReturn => 1,
            _ => 0,
        };
        Position += length;
        return length > 0;
    }

    /// <summary>Steps over unsigned digits that make a number not above <paramref name="maximum"/>; otherwise null, and nothing moves.</summary>
    public long? TryTakeDigits(long maximum)
    {
        var length = 0;
        long value = 0;
        for (; PdfCharacter.IsDigit(Peek(length)); length++)
        {
            value = (value * 10) + (Peek(length) - '0');
            if (value > maximum)
            {
                return null;
            }
        }

        Position += length;
        return length == 0 ? null : value;
    }
}
