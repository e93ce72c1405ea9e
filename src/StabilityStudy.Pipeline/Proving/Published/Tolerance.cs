using StabilityStudy.Reporting.Proving;

namespace StabilityStudy.Pipeline.Proving.Published;

/// <summary>How far a figure may lie from the published one.</summary>
/// <param name="Amount">The distance.</param>
/// <param name="IsShare">Whether it is a share of the published figure.</param>
internal readonly record struct Tolerance(double Amount, bool IsShare)
{
    /// <summary>Smaller numbers are written with an exponent.</summary>
    private const double SmallestPlain = 0.0005;

    /// <summary>Not at all.</summary>
    public static Tolerance Equal => default;

    /// <summary>By an amount in the unit of the figure.</summary>
    public static Tolerance Within(double amount) => new(amount, IsShare: false);

    /// <summary>By a share of the published figure.</summary>
    public static Tolerance Share(double share) => new(share, IsShare: true);

    /// <summary>A figure with what was found.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="expected">The published digits, or a fraction that follows by hand, such as 26/7.</param>
    /// <param name="found">What was found; null where there is no value.</param>
    public ProofFigure Figure(string name, string expected, double? found)
    {
        var parts = expected
            .Split('/')
            .Select(part => double.Parse(part, NumberStyles.Float, CultureInfo.InvariantCulture))
            .ToArray();
        var value = parts.Length == 2 ? parts[0] / parts[1] : parts[0];
        return new ProofFigure(
            name,
            expected,
            found?.ToString("R", CultureInfo.InvariantCulture) ?? "no value",
            Text,
            found is { } number
            && Math.Abs(number - value) <= (IsShare ? Amount * Math.Abs(value) : Amount)
                ? Agreement.Agrees
                : Agreement.Differs
        );
    }

    private string Text =>
        Amount == 0
            ? "equal"
            : "within "
                + Amount.ToString(
                    Amount < SmallestPlain ? "0.#e-0" : "0.####",
                    CultureInfo.InvariantCulture
                )
                + (IsShare ? " of it" : "");
}
