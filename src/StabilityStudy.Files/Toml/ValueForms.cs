using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.Files.Toml;

/// <summary>The ways in which values of TOML files are written.</summary>
internal static class ValueForms
{
    /// <summary>A text on one line.</summary>
    public static readonly ValueForm<string> Text = new("a text", "", ValueReading.Text);

    /// <summary>The same, null where it is not given.</summary>
    public static readonly ValueForm<string?> OptionalText = Text.As<string?>(null, text => text);

    /// <summary>Texts in brackets.</summary>
    public static readonly ValueForm<ImmutableArray<string>> Texts = ListOf(Text, "texts");

    /// <summary>A text, or several in brackets.</summary>
    public static readonly ValueForm<ImmutableArray<string>> TextOrTexts = new(
        "a text, or texts in brackets",
        [],
        (TomlTable table, Key key, TomlValue value, out ImmutableArray<string> read) =>
        {
            if (value is TomlList)
            {
                return Texts.TryRead(table, key, value, out read);
            }

            var isRead = Text.TryRead(table, key, value, out var one);
            read = isRead ? [one!] : [];
            return isRead;
        }
    );

    /// <summary>True or false.</summary>
    public static readonly ValueForm<bool> Flag = Of<bool>(
        "true or false",
        (table, key, value) =>
        {
            if (value is TomlFlag flag)
            {
                return flag.IsTrue;
            }

            ValueReading.WrongType(table, key, value, "true or false, without quotes");
            return null;
        }
    );

    /// <summary>A whole number and a unit.</summary>
    public static readonly ValueForm<TimeSpan> Duration = Of<TimeSpan>(
        "a duration",
        ValueReading.Duration
    );

    /// <summary>Durations in brackets.</summary>
    public static readonly ValueForm<ImmutableArray<TimeSpan>> Durations = ListOf(
        Duration,
        "durations"
    );

    /// <summary>A duration above zero.</summary>
    public static readonly ValueForm<TimeSpan> LongDuration = Duration.When(
        "a duration above zero",
        (table, key, duration) =>
            duration > TimeSpan.Zero
            || table.Refuse(
                key,
                FileQueries.OutOfRange,
                DurationText.Format(duration),
                $"\"{key.Name}\" must be above zero.",
                "Correct the duration."
            )
    );

    /// <summary>A day.</summary>
    public static readonly ValueForm<DateOnly> Date = Of<DateOnly>("a date", ValueReading.Date);

    /// <summary>A time of day.</summary>
    public static readonly ValueForm<TimeOnly> TimeOfDay = Of<TimeOnly>(
        "a time of day",
        ValueReading.TimeOfDay
    );

    /// <summary>A confidence level: the double nearest to the decimal as written.</summary>
    public static readonly ValueForm<double> Confidence = Number(NumberRange.Confidence)
        .As(
            0d,
            number =>
                double.Parse(
                    number.ToString(CultureInfo.InvariantCulture),
                    CultureInfo.InvariantCulture
                )
        );

    /// <summary>A text for page 1, of at most so many characters.</summary>
    public static ValueForm<string> TextUpTo(int most) =>
        Text.When(
            FormattableString.Invariant($"a text of at most {most} characters"),
            (table, key, text) =>
                text.Length <= most
                || table.Refuse(
                    key,
                    FileQueries.TextTooLong,
                    text[..most] + "…",
                    FormattableString.Invariant(
                        $"The text of \"{key.Name}\" has {text.Length} characters; it has room for {most}."
                    ),
                    "Shorten it; details have their place among the deviations or in your own documents."
                )
        );

    /// <summary>A number.</summary>
    public static ValueForm<decimal> Number(NumberRange range) =>
        Of<decimal>(
            range.Words,
            (table, key, value) => ValueReading.Number(table, key, value, range)
        );

    /// <summary>A whole number.</summary>
    public static ValueForm<int> Whole(int least, int most) =>
        Number(NumberRange.Whole(least, most)).As(0, decimal.ToInt32);

    /// <summary>Numbers in brackets, from the lowest to the highest.</summary>
    /// <param name="what">What the numbers are: "decision levels".</param>
    public static ValueForm<ImmutableArray<decimal>> Ascending(string what) =>
        ListOf(Number(NumberRange.Any), "numbers")
            .When(
                "numbers, ascending",
                (table, key, numbers) =>
                    numbers.Zip(numbers.Skip(1)).All(pair => pair.First < pair.Second)
                    || table.Refuse(
                        key,
                        FileQueries.OutOfRange,
                        "",
                        $"The {what} are not ascending.",
                        "List them from the lowest to the highest, each once."
                    )
            );

    /// <summary>Two numbers in brackets, the lowest first.</summary>
    /// <param name="range">What each may be.</param>
    /// <param name="allowEqual">Whether both may be the same.</param>
    public static ValueForm<(decimal Lowest, decimal Highest)> Interval(
        NumberRange range,
        bool allowEqual
    ) =>
        ListOf(Number(range), "numbers")
            .When(
                $"two numbers, the {(allowEqual ? "lowest" : "lower")} first; each {range.Words}",
                (table, key, numbers) =>
                    (
                        numbers is [var lowest, var highest]
                        && (lowest < highest || (allowEqual && lowest == highest))
                    )
                    || table.Refuse(
                        key,
                        FileQueries.OutOfRange,
                        string.Join(
                            ", ",
                            numbers.Select(n => n.ToString(CultureInfo.InvariantCulture))
                        ),
                        $"\"{key.Name}\" needs two numbers, the lowest first.",
                        "Write [lowest, highest]."
                    )
            )
            .As<(decimal, decimal)>(default, numbers => (numbers[0], numbers[1]));

    /// <summary>One of a set of words.</summary>
    public static ValueForm<T> Word<T>(WordSet<T> words)
        where T : struct =>
        Of<T>(words.Listed, (table, key, value) => ValueReading.Word(table, key, value, words));

    /// <summary>Some of a set of words, in brackets.</summary>
    public static ValueForm<ImmutableArray<T>> WordsOf<T>(WordSet<T> words)
        where T : struct =>
        ListOf(Word(words), "words") with
        {
            Allowed = $"one or more of {words.Listed}",
        };

    /// <summary>A list in brackets of at least one entry.</summary>
    /// <param name="item">How each entry is written.</param>
    /// <param name="plural">What the entries are: "durations".</param>
    public static ValueForm<ImmutableArray<T>> ListOf<T>(ValueForm<T> item, string plural) =>
        new(
            plural,
            [],
            (TomlTable table, Key key, TomlValue value, out ImmutableArray<T> read) =>
            {
                read = [];
                if (value is not TomlList list)
                {
                    return ValueReading.WrongType(
                        table,
                        key,
                        value,
                        $"a list of {plural} in brackets"
                    );
                }

                var items = ImmutableArray.CreateBuilder<T>(list.Items.Length);
                foreach (var entry in list.Items)
                {
                    if (item.TryRead(table, key, entry, out var one))
                    {
                        items.Add(one);
                    }
                }

                read = items.ToImmutable();
                return list.Items.IsEmpty
                    ? table.Refuse(
                        key,
                        FileQueries.EmptyList,
                        list.Text,
                        $"\"{key.Name}\" has no entry.",
                        $"List at least one of the {plural}."
                    )
                    : items.Count == list.Items.Length;
            }
        );

    /// <summary>A list in which nothing stands twice.</summary>
    public static ValueForm<ImmutableArray<string>> EachOnce(
        ValueForm<ImmutableArray<string>> list,
        Func<string, string> message
    ) =>
        list.When(
            $"{list.Allowed}, each once",
            (table, key, items) =>
                items.GroupBy(item => item).FirstOrDefault(group => group.Count() > 1)
                    is not { } twice
                || table.Refuse(
                    key,
                    ProtocolQueries.DuplicateId,
                    twice.Key,
                    message(twice.Key),
                    "List each once."
                )
        );

    /// <summary>The same, null where none is given.</summary>
    public static ValueForm<T?> OrNone<T>(this ValueForm<T> form)
        where T : struct => form.As<T?>(null, value => value);

    /// <summary>A record, null where none is given.</summary>
    public static ValueForm<T?> OrNothing<T>(this ValueForm<T> form)
        where T : class => form.As<T?>(null, value => value);

    private static ValueForm<T> Of<T>(string allowed, Func<TomlTable, Key, TomlValue, T?> read)
        where T : struct =>
        new(
            allowed,
            default,
            (TomlTable table, Key key, TomlValue value, out T found) =>
            {
                var result = read(table, key, value);
                found = result.GetValueOrDefault();
                return result.HasValue;
            }
        );
}
