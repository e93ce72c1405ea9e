namespace StabilityStudy.Statistics.Agreement;

/// <summary>
/// The largest change of one result that is acceptable: an amount, a percentage of the first result, or the greater of
/// both.
/// </summary>
/// <param name="Absolute">An amount in the unit of the results, above zero; null when only the percentage counts.</param>
/// <param name="Percent">A percentage of the first result, above zero; null when only the amount counts.</param>
/// <exception cref="ArgumentException">Neither is given, or one is not above zero, has more than nine decimals or is beyond 9 × 10⁸.</exception>
public sealed record Allowance(decimal? Absolute, decimal? Percent)
{
    /// <summary>An amount in the unit of the results, above zero; null when only the percentage counts.</summary>
    public decimal? Absolute { get; } =
        Absolute is null && Percent is null
            ? throw new ArgumentException(
                "An allowance is an amount, a percentage or both.",
                nameof(Absolute)
            )
            : Checked(Absolute, nameof(Absolute));

    /// <summary>A percentage of the first result, above zero; null when only the amount counts.</summary>
    public decimal? Percent { get; } = Checked(Percent, nameof(Percent));

    /// <summary>The allowance at a first result: max(absolute, percent·x/100), in the unit of the results.</summary>
    /// <param name="x">A first result.</param>
    /// <remarks>For drawing and description; whether a pair is inside is decided exactly by <see cref="AllowableDifference"/>.</remarks>
    /// <exception cref="ArgumentException"><paramref name="x"/> is not a number.</exception>
    public double At(double x)
    {
        Require.Number(x, nameof(x));
        return (Absolute, Percent) switch
        {
            ({ } absolute, { } percent) => Math.Max((double)absolute, (double)percent * x / 100),
            (_, { } percent) => (double)percent * x / 100,
            ({ } absolute, _) => (double)absolute,
            _ => throw new InvalidOperationException("An allowance always has a part."),
        };
    }

    private static decimal? Checked(decimal? part, string parameter)
    {
        if (
            part is <= 0 or > ExactPairs.Largest
            || (part is { } p && decimal.Round(p, ExactPairs.MostDecimals) != p)
        )
        {
            throw new ArgumentException(
                "Each part of an allowance is above zero, at most 9 × 10⁸, with at most nine decimals.",
                parameter
            );
        }

        return part;
    }
}
