using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Rows;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Csv;

/// <content>Typed values.</content>
internal sealed partial class CsvRow
{
    /// <summary>A text that every row needs.</summary>
    public string RequireText(string column)
    {
        var before = queries.StopCount;
        var text = PlainText(column);
        if (text.Length == 0 && queries.StopCount == before)
        {
            Missing(column);
        }

        return text;
    }

    /// <summary>A code or short text; empty when not recorded.</summary>
    public string OptionalText(string column) => PlainText(column);

    /// <summary>A text in any words; line breaks become line feeds.</summary>
    public string FreeText(string column)
    {
        if (!Characters(column).ContainsAny(Controls))
        {
            return Field(column);
        }

        var text = Field(column)
            .Replace("\r\n", "\n", StringComparison.Ordinal)
            .Replace('\r', '\n');
        if (!text.Any(c => char.IsControl(c) && c is not ('\n' or '\t')))
        {
            return text;
        }

        Add(
            FileQueries.ControlCharacter,
            column,
            "",
            "The text holds a character that cannot be seen.",
            "Type the text again."
        );
        return "";
    }

    /// <summary>A code that must be one of those known.</summary>
    public string RequireKnown(string column, CodeSet known) =>
        Known(column, RequireText(column), known);

    /// <summary>A code that must be one of those known; empty when not recorded.</summary>
    public string OptionalKnown(string column, CodeSet known) =>
        Known(column, OptionalText(column), known);

    /// <summary>A code of a person, specimen or tube, which must not tell who the person is.</summary>
    public string RequireStudyCode(string column)
    {
        var code = RequireText(column);
        if (IdentityShape.Of(code) is { } shape)
        {
            Add(
                RowQueries.LooksLikeIdentity,
                column,
                "",
                $"The code looks like {shape}; it is not repeated here.",
                "Replace it by a study code that says nothing about the person."
            );
        }

        return code;
    }

    /// <summary>A number; null when not recorded.</summary>
    public decimal? OptionalDecimal(string column, NumberRange range)
    {
        var text = Plain(column);
        if (text.IsEmpty)
        {
            return null;
        }

        if (StrictNumber.Read(text, out var number) is { } advice)
        {
            Add(
                FileQueries.NotANumber,
                column,
                text.ToString(),
                $"\"{text}\" is not a plain decimal number.",
                char.ToUpperInvariant(advice[0]) + advice[1..] + "."
            );
            return null;
        }

        if (!range.Holds(number))
        {
            Add(
                FileQueries.OutOfRange,
                column,
                text.ToString(),
                $"\"{column}\" must be {range.Words}.",
                "Correct the number."
            );
            return null;
        }

        return number;
    }

    /// <summary>A whole number; null when not recorded.</summary>
    public int? OptionalWhole(string column, NumberRange range) =>
        OptionalDecimal(column, range) is { } number ? decimal.ToInt32(number) : null;

    /// <summary>A time that every row needs.</summary>
    public DateTimeOffset RequireTime(string column, LocalTimes times)
    {
        var before = queries.StopCount;
        var text = Plain(column);
        if (!text.IsEmpty)
        {
            return Time(column, text, times) ?? default;
        }

        if (queries.StopCount == before)
        {
            Missing(column);
        }

        return default;
    }

    /// <summary>A time; null when not recorded.</summary>
    public DateTimeOffset? OptionalTime(string column, LocalTimes times)
    {
        var text = Plain(column);
        return text.IsEmpty ? null : Time(column, text, times);
    }

    /// <summary>One of the words of a set.</summary>
    public T Choice<T>(string column, WordSet<T> words)
        where T : struct
    {
        var text = Plain(column);
        if (words.TryRead(text, out var value))
        {
            return value.Value;
        }

        var read = text.ToString();
        Add(
            FileQueries.UnknownWord,
            column,
            read,
            $"\"{read}\" is not known here.{NearestWord.Question(read, words.Words)}",
            $"Write one of {words.Listed}."
        );
        return default;
    }

    private DateTimeOffset? Time(string column, ReadOnlySpan<char> text, LocalTimes times)
    {
        var (time, fault) = times.Read(text);
        if (fault is { } found)
        {
            Add(
                found.Kind,
                column,
                text.ToString(),
                found.Message,
                layout?.DateFormat is { } format && found.Kind == RowQueries.NotATime
                    ? $"Write it as the others, by date_format = \"{format}\" of study.toml, or correct date_format."
                    : found.Action
            );
        }

        // Without the zone of an unreadable study.toml the time is not wrong, but the row cannot be used.
        _isUndecided |= time is null;
        return time;
    }

    private string Known(string column, string code, CodeSet known)
    {
        if (code.Length > 0 && !known.Holds(code))
        {
            Add(
                ProtocolQueries.UnknownReference,
                column,
                code,
                $"There is no {known.What} \"{code}\" in {known.Where}.{known.Question(code)}",
                $"Correct the code, or add it to {known.Where}."
            );
        }

        return code;
    }
}
