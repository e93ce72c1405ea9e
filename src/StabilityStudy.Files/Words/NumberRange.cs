namespace StabilityStudy.Files.Words;

/// <summary>The numbers that make sense for a key or column.</summary>
/// <param name="Words">The range in words: "above zero".</param>
/// <param name="Holds">Whether a number is inside.</param>
internal sealed record NumberRange(string Words, Func<decimal, bool> Holds)
{
    public static readonly NumberRange Any = new("a number", _ => true);

    public static readonly NumberRange AboveZero = new("above zero", n => n > 0);

    public static readonly NumberRange Confidence = new(
        "a confidence level from 0.8 to 0.999",
        n => n is >= 0.8m and <= 0.999m
    );

    public static readonly NumberRange RequiredShare = new(
        "a share in percent, above 50 and at most 100",
        n => n is > 50 and <= 100
    );

    public static readonly NumberRange LargestShare = new(
        "a share in percent, above 0 and below 50",
        n => n is > 0 and < 50
    );

    public static readonly NumberRange LeftOut = new(
        "a percentage from 0 to 100",
        n => n is >= 0 and <= 100
    );

    public static readonly NumberRange Isi = new(
        "an international sensitivity index above 0 and at most 10",
        n => n is > 0 and <= 10
    );

    public static readonly NumberRange Percent = new(
        "a percentage above 0 and at most 100",
        n => n is > 0 and <= 100
    );

    // A change of 100 % downward has no logarithm, and no laboratory allows it.
    public static readonly NumberRange LimitPercent = new(
        "a percentage above 0 and below 100",
        n => n is > 0 and < 100
    );

    public static readonly NumberRange ChangePercent = new(
        "a percentage from -100 to 1000",
        n => n is >= -100 and <= 1000
    );

    public static readonly NumberRange FillPercent = new(
        "a fill in percent of nominal, from 0 to 120",
        n => n is >= 0 and <= 120
    );

    // A fraction written for a percentage would pass every rule.
    public static readonly NumberRange HematocritPercent = new(
        "a hematocrit in percent, from 5 to 85",
        n => n is >= 5 and <= 85
    );

    public static readonly NumberRange Celsius = new(
        "a temperature from -200 to 60 °C",
        n => n is >= -200 and <= 60
    );

    public static readonly NumberRange Citrate = new(
        "a percentage above 0 and at most 10",
        n => n is > 0 and <= 10
    );

    public static readonly NumberRange Platelets = new(
        "a count from 0 to 2000",
        n => n is >= 0 and <= 2000
    );

    public static readonly NumberRange DrawPosition = Whole(1, 1000);

    public static readonly NumberRange Inversions = Whole(0, 1000);

    public static readonly NumberRange Replicate = Whole(1, 99);

    public static readonly NumberRange Line = Whole(1, int.MaxValue);

    /// <summary>Whole numbers from one to another, both included.</summary>
    public static NumberRange Whole(int least, int most) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"),
            n => n >= least && n <= most && decimal.IsInteger(n)
        );
}
