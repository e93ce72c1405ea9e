using System.Text.Json;
using System.Text.Json.Nodes;
using System.Xml;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>The forms of single values, and what is made of forms.</summary>
internal static class Form
{
    /// <summary>A text as it was read.</summary>
    public static readonly Form<string> Text = new ScalarForm<string>(
        "string",
        (json, value) => json.WriteStringValue(value)
    );

    /// <summary>A count, compared exactly.</summary>
    public static readonly Form<int> Count = new ScalarForm<int>(
        "integer",
        (json, value) => json.WriteNumberValue(value)
    );

    /// <summary>A count that may exceed two thousand million.</summary>
    public static readonly Form<long> LongCount = new ScalarForm<long>(
        "integer",
        (json, value) => json.WriteNumberValue(value)
    );

    /// <summary>The seed of simulated values.</summary>
    public static readonly Form<ulong> Seed = new ScalarForm<ulong>(
        "integer",
        (json, value) => json.WriteNumberValue(value)
    );

    /// <summary>An estimate.</summary>
    public static readonly Form<double> Number = new NumberForm();

    /// <summary>True or false.</summary>
    public static readonly Form<bool> Truth = new ScalarForm<bool>(
        "boolean",
        (json, value) => json.WriteBooleanValue(value)
    );

    /// <summary>A decimal as a text, so that no reader turns 7.50 into a double.</summary>
    public static readonly Form<decimal> Exact = new ScalarForm<decimal>(
        "string",
        (json, value) => json.WriteStringValue(value.ToString(CultureInfo.InvariantCulture)),
        () => new JsonObject { ["pattern"] = "^-?[0-9]+(\\.[0-9]+)?$" }
    );

    /// <summary>A duration as in ISO 8601: "PT12H", "P7D".</summary>
    public static readonly Form<TimeSpan> Duration = new ScalarForm<TimeSpan>(
        "string",
        (json, value) => json.WriteStringValue(XmlConvert.ToString(value)),
        () => new JsonObject { ["format"] = "duration" }
    );

    /// <summary>A time point as its delay.</summary>
    public static readonly Form<TimePoint> TimePoint = Of<TimePoint, TimeSpan>(
        Duration,
        timePoint => timePoint.Delay
    );

    /// <summary>A time with its offset from UTC as in ISO 8601.</summary>
    public static readonly Form<DateTimeOffset> Time = new ScalarForm<DateTimeOffset>(
        "string",
        (json, value) => json.WriteStringValue(value),
        () => new JsonObject { ["format"] = "date-time" }
    );

    /// <summary>A day as in ISO 8601.</summary>
    public static readonly Form<DateOnly> Day = new ScalarForm<DateOnly>(
        "string",
        (json, value) =>
            json.WriteStringValue(value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
        () => new JsonObject { ["format"] = "date" }
    );

    /// <summary>A time of the day without a place.</summary>
    public static readonly Form<TimeOnly> TimeOfDay = new ScalarForm<TimeOnly>(
        "string",
        (json, value) =>
            json.WriteStringValue(value.ToString("HH:mm:ss", CultureInfo.InvariantCulture)),
        () => new JsonObject { ["pattern"] = "^[0-9]{2}:[0-9]{2}:[0-9]{2}$" }
    );

    /// <summary>A member of an enum as a word: NotSupported is "not-supported".</summary>
    public static Form<T> Word<T>()
        where T : struct, Enum
    {
        var words = Enum.GetValues<T>()
            .ToDictionary(
                value => value,
                value => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString())
            );
        return new ScalarForm<T>(
            "string",
            (json, value) => json.WriteStringValue(words[value]),
            () =>
                new JsonObject
                {
                    ["enum"] = new JsonArray([.. words.Values.Select(word => (JsonNode)word)]),
                }
        );
    }

    /// <summary>Values whose place in the list tells them apart.</summary>
    public static Form<ImmutableArray<T>> List<T>(Form<T> item) => new ListForm<T>(item, [], false);

    /// <summary>Values told apart by what they are called; the same inputs give the same ones in every version.</summary>
    public static Form<ImmutableArray<T>> Keyed<T>(Form<T> item, params string[] key) =>
        new ListForm<T>(item, key, false);

    /// <summary>Values told apart by what they are called, to which another version may add.</summary>
    public static Form<ImmutableArray<T>> Open<T>(Form<T> item, params string[] key) =>
        new ListForm<T>(item, key, true);

    /// <summary>Values told apart by what they are called, each on a line of its own.</summary>
    public static Form<ImmutableArray<T>> Lines<T>(Form<T> item, params string[] key) =>
        new LinesForm<T>(item, Keyed(item, key));

    /// <summary>A value as one text where that says all of it, else in its form.</summary>
    public static Form<T> Short<T>(Form<T> form, Func<T, string?> shortly) =>
        new ShortForm<T>(form, shortly);

    /// <summary>A value written in the form of what it holds.</summary>
    public static Form<T> Of<T, TInner>(Form<TInner> inner, Func<T, TInner> get) =>
        new DerivedForm<T, TInner>(inner, get);

    /// <summary>What follows from the inputs alone, whatever the rules: it is the same in every version.</summary>
    public static Form<T> FromInputs<T>(Form<T> form) =>
        new WeighedForm<T>(form, ComparisonWeight.Inputs);

    /// <summary>What a conclusion is or hangs on: no version may leave it out.</summary>
    public static Form<T> Decisive<T>(Form<T> form) =>
        new WeighedForm<T>(form, ComparisonWeight.Decisive);
}

/// <summary>Adds "or null" to a form whose values may be absent.</summary>
internal static class OptionalValue
{
    /// <summary>The value or null.</summary>
    public static Form<T?> OrNull<T>(this Form<T> form)
        where T : struct =>
        new OptionalForm<T?, T>(form, value => value.HasValue, value => value.GetValueOrDefault());
}

/// <summary>Adds "or null" to a form whose values may be absent.</summary>
internal static class OptionalReference
{
    /// <summary>The value or null.</summary>
    public static Form<T?> OrNull<T>(this Form<T> form)
        where T : class =>
        new OptionalForm<T?, T>(form, value => value is not null, value => value!);
}
