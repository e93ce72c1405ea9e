using System.Globalization;
using System.Text;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Tables;

namespace StabilityStudy.Files.Messages;

/// <summary>
/// Makes text of parts of fields: repetitions, components, subcomponents and escape sequences (HL7 Version 2.5.1, chapter 2).
/// What could be read in two ways is refused, because a part that is dropped unseen can change a number.
/// </summary>
internal sealed class MessageText(SegmentSigns signs, CharacterSet characters)
{
    private const int LongestText = 1000;

    /// <summary>Two double quotes say that there is no value.</summary>
    private static ReadOnlySpan<byte> NoValue => "\"\""u8;

    /// <summary>A component of a field that has one value.</summary>
    /// <param name="field">The field.</param>
    /// <param name="component">The component, counted from 1.</param>
    /// <param name="name">Name of the field, for a query.</param>
    public TableCell Component(ReadOnlySpan<byte> field, int component, string name) =>
        field.Contains(signs.Repetition)
            ? Refused(name, "holds several values")
            : Plain(Segment.Part(field, signs.Component, component), name);

    /// <summary>The identifier in a component, whose further subcomponents say who gave it.</summary>
    public TableCell Identifier(ReadOnlySpan<byte> field, int component, string name) =>
        field.Contains(signs.Repetition)
            ? Refused(name, "holds several values")
            : Text(
                Segment.Part(
                    Segment.Part(field, signs.Component, component),
                    signs.Subcomponent,
                    1
                ),
                name
            );

    /// <summary>The first components of all values of a field, with a space between them.</summary>
    public TableCell Values(ReadOnlySpan<byte> field, string name)
    {
        if (!field.Contains(signs.Repetition))
        {
            return Component(field, 1, name);
        }

        var texts = new List<string>();
        foreach (var part in field.Split(signs.Repetition))
        {
            var cell = Component(field[part], 1, name);
            if (cell.Kind == CellKind.Refused)
            {
                return cell;
            }

            if (cell.Text.Length > 0)
            {
                texts.Add(cell.Text);
            }
        }

        return new(string.Join(' ', texts));
    }

    /// <summary>A field that is one text without components.</summary>
    public TableCell Whole(ReadOnlySpan<byte> field, string name) =>
        field.Contains(signs.Component)
            ? Refused(name, "is parted into components, which a text or number is not")
            : Component(field, 1, name);

    /// <summary>A cell that cannot be used.</summary>
    public static TableCell Refused(string name, string why, string? action = null) =>
        TableCell.Refusal(
            new FieldFault(MessageQueries.FieldNotClear, "", $"{name} {why}.", action)
        );

    private TableCell Plain(ReadOnlySpan<byte> part, string name) =>
        part.Contains(signs.Subcomponent)
            ? Refused(name, "is parted into subcomponents where one text is expected")
            : Text(part, name);

    private TableCell Text(ReadOnlySpan<byte> part, string name)
    {
        if (part.IsEmpty || part.SequenceEqual(NoValue))
        {
            return new("");
        }

        if (part.Length > LongestText)
        {
            return Refused(
                name,
                FormattableString.Invariant($"has more than {LongestText} characters")
            );
        }

        if (part.Contains(signs.Escape))
        {
            var bytes = new List<byte>(part.Length);
            if (!Unescape(part, bytes))
            {
                return Refused(
                    name,
                    "holds an escape sequence that does not end or is not known",
                    @"Known are \F\, \S\, \T\, \R\, \E\ and \Xdd\; a sign that is meant as itself must be written as one of them."
                );
            }

            part = bytes.ToArray();
        }

        try
        {
            return new(characters.Encoding.GetString(part));
        }
        catch (DecoderFallbackException)
        {
            return Refused(
                name,
                $"holds characters that are not {characters.Name}",
                "Correct MSH-18 at the sender; where messages state no character set, write encoding into the table of the file under [read] in study.toml."
            );
        }
    }

    private bool Unescape(ReadOnlySpan<byte> text, List<byte> bytes)
    {
        while (!text.IsEmpty)
        {
            var start = text.IndexOf(signs.Escape);
            if (start < 0)
            {
                bytes.AddRange(text);
                return true;
            }

            bytes.AddRange(text[..start]);
            var rest = text[(start + 1)..];
            var end = rest.IndexOf(signs.Escape);
            if (end < 0 || !Add(rest[..end], bytes))
            {
                return false;
            }

            text = rest[(end + 1)..];
        }

        return true;
    }

    private bool Add(ReadOnlySpan<byte> sequence, List<byte> bytes)
    {
        switch (sequence)
        {
            case [(byte)'F']:
                bytes.Add(signs.Field);
                return true;
            case [(byte)'S']:
                bytes.Add(signs.Component);
                return true;
            case [(byte)'T']:
                bytes.Add(signs.Subcomponent);
                return true;
            case [(byte)'R']:
                bytes.Add(signs.Repetition);
                return true;
            case [(byte)'E']:
                bytes.Add(signs.Escape);
                return true;
            // Begin and end of a highlighted text.
            case [(byte)'H' or (byte)'N']:
                return true;
            case [(byte)'X', .. var digits] when digits.Length > 0 && digits.Length % 2 == 0:
                Span<byte> values = new byte[digits.Length / 2];
                if (
                    Convert.FromHexString(digits, values, out _, out _)
                    != System.Buffers.OperationStatus.Done
                )
                {
                    return false;
                }

                bytes.AddRange(values);
                return true;
            default:
                return false;
        }
    }
}
