using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.Files.Toml;

/// <summary>Reads single values; null or false after a query.</summary>
internal static class ValueReading
{
    /// <summary>What ready protocols have where a laboratory writes its own words.</summary>
    private const string Mark = "CHANGE:";

    /// <summary>A value of another type stands there.</summary>
    public static bool WrongType(TomlTable table, Key key, TomlValue value, string wanted) =>
        table.Refuse(
            key,
            FileQueries.WrongType,
            value.Text,
            $"\"{key.Name}\" needs {wanted}.",
            $"Write {wanted}."
        );

    public static bool Text(
        TomlTable table,
        Key key,
        TomlValue value,
        [MaybeNullWhen(false)] out string read
    )
    {
        read = (value as TomlText)?.Content;
        if (read is null)
        {
            return WrongType(table, key, value, "a text in double quotes");
        }

        if (read.Length == 0 || read.Trim().Length != read.Length)
        {
            return table.Refuse(
                key,
                FileQueries.EmptyText,
                read,
                $"The text of \"{key.Name}\" is empty, or begins or ends with a space."
            );
        }

        if (read.Contains(Mark, StringComparison.Ordinal))
        {
            table.Remark(
                key,
                ProtocolQueries.LeftToChange,
                read,
                $"The text of \"{key.Name}\" still has the mark {Mark} of a ready protocol."
            );
        }

        return UnseenCharacters.First(read) is not { } unseen
            || table.Refuse(
                key,
                FileQueries.ControlCharacter,
                "",
                $"The text of \"{key.Name}\" holds a line break or another character that cannot be seen: {UnseenCharacters.NameOf(unseen)}.",
                "Type the text again, on one line."
            );
    }

    public static decimal? Number(TomlTable table, Key key, TomlValue value, NumberRange range)
    {
        if (value is not TomlNumber number)
        {
            WrongType(table, key, value, "a number without quotes");
            return null;
        }

        if (StrictNumber.Read(number.Text, out var result) is { } advice)
        {
            table.Fault(
                key,
                FileQueries.NotANumber,
                number.Text,
                $"\"{number.Text}\" is not a plain decimal number.",
                char.ToUpperInvariant(advice[0]) + advice[1..] + "."
            );
            return null;
        }

        if (range.Holds(result))
        {
            return result;
        }

        table.Fault(
            key,
            FileQueries.OutOfRange,
            number.Text,
            $"\"{key.Name}\" must be {range.Words}."
        );
        return null;
    }

    public static TimeSpan? Duration(TomlTable table, Key key, TomlValue value)
    {
        if (!Text(table, key, value, out var text))
        {
            return null;
        }

        if (DurationText.TryParse(text, out var duration))
        {
            return duration;
        }

        table.Fault(key, FileQueries.NotADuration, text, $"\"{text}\" is not a duration.");
        return null;
    }

    public static DateOnly? Date(TomlTable table, Key key, TomlValue value)
    {
        var text =
            value is TomlMoment moment ? moment.Text
            : Text(table, key, value, out var written) ? written
            : null;
        if (text is null)
        {
            return null;
        }

        if (StrictDate.TryRead(text, out var day))
        {
            return day;
        }

        table.Fault(key, FileQueries.NotADate, text, $"\"{text}\" is not a date of the calendar.");
        return null;
    }

    public static TimeOnly? TimeOfDay(TomlTable table, Key key, TomlValue value)
    {
        if (!Text(table, key, value, out var text))
        {
            return null;
        }

        if (
            TimeOnly.TryParseExact(
                text,
                "HH:mm",
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var time
            )
        )
        {
            return time;
        }

        table.Fault(
            key,
            FileQueries.NotADate,
            text,
            $"\"{text}\" is not a time of day.",
            "Write hours and minutes: \"07:45\"."
        );
        return null;
    }

    public static T? Word<T>(TomlTable table, Key key, TomlValue value, WordSet<T> words)
        where T : struct
    {
        if (!Text(table, key, value, out var text))
        {
            return null;
        }

        if (words.TryRead(text, out var meaning))
        {
            return meaning;
        }

        table.Fault(
            key,
            FileQueries.UnknownWord,
            text,
            $"\"{text}\" is not known for \"{key.Name}\".{NearestWord.Question(text, words.Words)}",
            $"Write one of {words.Listed}."
        );
        return null;
    }
}
