using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Toml;

/// <content>Typed values. "Require" raises a query when the key is missing, "Optional" yields null.</content>
internal sealed partial class TomlTable
{
    public string RequireText(string key) =>
        Require(key) is { } entry ? AsText(entry, entry.Value) ?? "" : "";

    /// <summary>A text for page 1, of at most so many characters.</summary>
    public string RequireText(string key, int most)
    {
        var text = RequireText(key);
        if (text.Length > most)
        {
            Fault(
                key,
                FileQueries.TextTooLong,
                text[..most] + "…",
                FormattableString.Invariant(
                    $"The text of \"{key}\" has {text.Length} characters; it has room for {most}."
                ),
                "Shorten it; details have their place among the deviations or in your own documents."
            );
        }

        return text;
    }

    public string? OptionalText(string key) =>
        Find(key) is { } entry ? AsText(entry, entry.Value) : null;

    public int RequireWhole(string key, int least, int most) =>
        Require(key) is { } entry ? AsWhole(entry, least, most) ?? 0 : 0;

    public int? OptionalWhole(string key, int least, int most) =>
        Find(key) is { } entry ? AsWhole(entry, least, most) : null;

    public decimal RequireDecimal(string key, NumberRange range) =>
        Require(key) is { } entry ? AsDecimal(entry, entry.Value, range) ?? 0 : 0;

    public decimal? OptionalDecimal(string key, NumberRange range) =>
        Find(key) is { } entry ? AsDecimal(entry, entry.Value, range) : null;

    /// <summary>A confidence level: the double nearest to the decimal as written.</summary>
    public double RequireConfidence(string key) =>
        double.Parse(
            RequireDecimal(key, NumberRange.Confidence).ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );

    public bool OptionalFlag(string key)
    {
        if (Find(key) is not { } entry)
        {
            return false;
        }

        if (entry.Value is TomlFlag flag)
        {
            return flag.IsTrue;
        }

        WrongType(entry, "true or false, without quotes");
        return false;
    }

    public TimeSpan RequireDuration(string key) =>
        Require(key) is { } entry ? AsDuration(entry, entry.Value) ?? default : default;

    /// <summary>A duration above zero.</summary>
    public TimeSpan RequireLongDuration(string key)
    {
        var duration = RequireDuration(key);
        if (IsSound(key) && duration <= TimeSpan.Zero)
        {
            Fault(
                key,
                FileQueries.OutOfRange,
                DurationText.Format(duration),
                $"\"{key}\" must be above zero.",
                "Correct the duration."
            );
        }

        return duration;
    }

    public TimeSpan? OptionalDuration(string key) =>
        Find(key) is { } entry ? AsDuration(entry, entry.Value) : null;

    public DateOnly RequireDate(string key) =>
        Require(key) is { } entry ? AsDate(entry) ?? default : default;

    public DateOnly? OptionalDate(string key) => Find(key) is { } entry ? AsDate(entry) : null;

    /// <summary>A time of day, "07:45".</summary>
    public TimeOnly? OptionalClock(string key)
    {
        if (OptionalText(key) is not { } text)
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

        Fault(
            key,
            FileQueries.NotADate,
            text,
            $"\"{text}\" is not a time of day.",
            "Write hours and minutes: \"07:45\"."
        );
        return null;
    }

    public T RequireChoice<T>(string key, WordSet<T> words)
        where T : struct =>
        Require(key) is { } entry ? AsChoice(entry, entry.Value, words) ?? default : default;

    public T? OptionalChoice<T>(string key, WordSet<T> words)
        where T : struct => Find(key) is { } entry ? AsChoice(entry, entry.Value, words) : null;

    public ImmutableArray<T> RequireChoices<T>(string key, WordSet<T> words)
        where T : struct =>
        Require(key) is { } entry
            ? Items(entry, "words", item => Listed(AsChoice(entry, item, words)))
            : [];

    public ImmutableArray<string> RequireTexts(string key) =>
        Require(key) is not null ? OptionalTexts(key) : [];

    public ImmutableArray<string> OptionalTexts(string key) =>
        Find(key) is { } entry
            ? Items<string>(entry, "texts", item => AsText(entry, item) is { } text ? [text] : [])
            : [];

    public ImmutableArray<decimal> OptionalDecimals(string key, NumberRange range) =>
        Find(key) is { } entry ? AsDecimals(entry, range) : [];

    public ImmutableArray<decimal> RequireDecimals(string key, NumberRange range) =>
        Require(key) is { } entry ? AsDecimals(entry, range) : [];

    public ImmutableArray<TimeSpan> RequireDurations(string key) =>
        Require(key) is { } entry
            ? Items(entry, "durations", item => Listed(AsDuration(entry, item)))
            : [];

    public ImmutableArray<TimeSpan> OptionalDurations(string key) =>
        Has(key) ? RequireDurations(key) : [];

    /// <summary>A duration above zero that may be there.</summary>
    public TimeSpan? OptionalLongDuration(string key) => Has(key) ? RequireLongDuration(key) : null;
}
