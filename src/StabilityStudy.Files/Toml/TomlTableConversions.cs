using System.Collections.Immutable;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Toml;

/// <content>From TOML values to typed values; null after a query.</content>
internal sealed partial class TomlTable
{
    private ImmutableArray<decimal> AsDecimals(TomlEntry entry, NumberRange range) =>
        Items(entry, "numbers", item => Listed(AsDecimal(entry, item, range)));

    private static IEnumerable<T> Listed<T>(T? value)
        where T : struct => value is { } item ? [item] : [];

    private ImmutableArray<T> Items<T>(
        TomlEntry entry,
        string wanted,
        Func<TomlValue, IEnumerable<T>> read
    )
    {
        if (entry.Value is not TomlList list)
        {
            WrongType(entry, $"a list of {wanted} in brackets");
            return [];
        }

        if (list.Items.IsEmpty)
        {
            Fault(
                entry.Key,
                FileQueries.EmptyList,
                list.Text,
                $"\"{entry.Key}\" has no entry.",
                $"List at least one of the {wanted}."
            );
        }

        return [.. list.Items.SelectMany(read)];
    }

    private string? AsText(TomlEntry entry, TomlValue value)
    {
        if (value is not TomlText text)
        {
            WrongType(entry, "a text in double quotes", value);
            return null;
        }

        if (text.Content.Length == 0 || text.Content.Trim().Length != text.Content.Length)
        {
            Fault(
                entry.Key,
                FileQueries.EmptyText,
                text.Content,
                $"The text of \"{entry.Key}\" is empty, or begins or ends with a space.",
                "Write the text, without spaces around it."
            );
            return null;
        }

        if (text.Content.Any(char.IsControl))
        {
            Fault(
                entry.Key,
                FileQueries.ControlCharacter,
                "",
                $"The text of \"{entry.Key}\" holds a line break or another character that cannot be seen.",
                "Type the text again, on one line."
            );
            return null;
        }

        return text.Content;
    }

    private decimal? AsDecimal(TomlEntry entry, TomlValue value, NumberRange range)
    {
        if (value is not TomlNumber number)
        {
            WrongType(entry, "a number without quotes", value);
            return null;
        }

        if (StrictNumber.Read(number.Text, out var result) is { } advice)
        {
            Fault(
                entry.Key,
                FileQueries.NotANumber,
                number.Text,
                $"\"{number.Text}\" is not a plain decimal number.",
                Sentence(advice)
            );
            return null;
        }

        if (!range.Holds(result))
        {
            Fault(
                entry.Key,
                FileQueries.OutOfRange,
                number.Text,
                $"\"{entry.Key}\" must be {range.Words}.",
                "Correct the number."
            );
            return null;
        }

        return result;
    }

    private int? AsWhole(TomlEntry entry, int least, int most)
    {
        var range = NumberRange.Whole(least, most);
        return AsDecimal(entry, entry.Value, range) is { } number ? decimal.ToInt32(number) : null;
    }

    private TimeSpan? AsDuration(TomlEntry entry, TomlValue value)
    {
        if (AsText(entry, value) is not { } text)
        {
            return null;
        }

        if (DurationText.TryParse(text, out var duration))
        {
            return duration;
        }

        Fault(
            entry.Key,
            FileQueries.NotADuration,
            text,
            $"\"{text}\" is not a duration.",
            "Write a whole number, a space and a unit: \"30 min\", \"4 h\" or \"14 d\"."
        );
        return null;
    }

    private DateOnly? AsDate(TomlEntry entry)
    {
        var text = entry.Value is TomlMoment moment ? moment.Text : AsText(entry, entry.Value);
        if (text is null)
        {
            return null;
        }

        if (StrictDate.TryRead(text, out var day))
        {
            return day;
        }

        Fault(
            entry.Key,
            FileQueries.NotADate,
            text,
            $"\"{text}\" is not a date of the calendar.",
            "Write year-month-day: 2026-02-28."
        );
        return null;
    }

    private T? AsChoice<T>(TomlEntry entry, TomlValue value, WordSet<T> words)
        where T : struct
    {
        if (AsText(entry, value) is not { } text)
        {
            return null;
        }

        if (words.TryRead(text, out var meaning))
        {
            return meaning;
        }

        Fault(
            entry.Key,
            FileQueries.UnknownWord,
            text,
            $"\"{text}\" is not known for \"{entry.Key}\".{NearestWord.Question(text, words.Words)}",
            $"Write one of {words.Listed}."
        );
        return null;
    }

    private void WrongType(TomlEntry entry, string wanted, TomlValue? value = null) =>
        Fault(
            entry.Key,
            FileQueries.WrongType,
            (value ?? entry.Value).Text,
            $"\"{entry.Key}\" needs {wanted}.",
            $"Write {wanted}."
        );

    private static string Sentence(string advice) =>
        char.ToUpperInvariant(advice[0]) + advice[1..] + ".";
}
