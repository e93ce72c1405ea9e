using System.Diagnostics.CodeAnalysis;
using StabilityStudy.Statistics.Regression;

namespace StabilityStudy.Statistics;

/// <summary>Why a method gives no number for these data.</summary>
/// <param name="Kind">What stands against it.</param>
/// <param name="Omitted">What is left out where it happens; null where it happens with all pairs.</param>
/// <param name="Association">The rank correlation that does not show that y rises with x; null with another reason.</param>
/// <param name="Point">The value where only its interval is refused; null where there is no value either.</param>
public sealed record NotComputable(
    Refusal Kind,
    OmittedPairs? Omitted = null,
    KendallTau? Association = null,
    PointEstimate? Point = null
)
{
    /// <summary>The stable code of the assumption that does not hold.</summary>
    public string Code => AssumptionCode.Of(Kind);
}

/// <summary>Pairs without which a line is fitted again for its standard error.</summary>
/// <param name="Pair">The place of the one pair, from 1; null for the pairs of one cluster.</param>
/// <param name="Pairs">Number of all pairs.</param>
public sealed record OmittedPairs(int? Pair, int Pairs);

/// <summary>An estimate without an interval.</summary>
/// <param name="Value">The value; of a line, its slope.</param>
/// <param name="Intercept">The intercept of a line, in the unit of y; null for other estimates.</param>
public sealed record PointEstimate(double Value, double? Intercept = null);

/// <summary>
/// The answer of a statistical method: either a value, with remarks, or the reason why there is none.
/// There is no default and no "not a number": whoever wants the value must say what happens without it.
/// </summary>
/// <typeparam name="T">The record of the method.</typeparam>
public sealed record Estimate<T>
    where T : class
{
    /// <summary>Creates an answer; exactly one of <paramref name="value"/> and <paramref name="notComputable"/> is given.</summary>
    /// <exception cref="ArgumentException">Both or neither are given.</exception>
    public Estimate(T? value, NotComputable? notComputable, ImmutableArray<EstimateNote> notes)
    {
        if (value is null == notComputable is null)
        {
            throw new ArgumentException(
                "An estimate holds either a value or the reason why there is none.",
                nameof(value)
            );
        }

        Value = value;
        NotComputable = notComputable;
        Notes = notes.IsDefault ? [] : notes;
    }

    /// <summary>The value; null exactly when <see cref="NotComputable"/> says why.</summary>
    public T? Value { get; }

    /// <summary>Why there is no value; null exactly when <see cref="Value"/> is given.</summary>
    public NotComputable? NotComputable { get; }

    /// <summary>Remarks that a reader of the value must see.</summary>
    public ImmutableArray<EstimateNote> Notes { get; }

    /// <summary>Gives the value when there is one.</summary>
    public bool TryGet([NotNullWhen(true)] out T? value)
    {
        value = Value;
        return value is not null;
    }

    /// <summary>The same refusal, where a value of another kind was wanted.</summary>
    /// <exception cref="ArgumentException">There is a value.</exception>
    public Estimate<TOther> RefusedAs<TOther>()
        where TOther : class => new(null, NotComputable, Notes);
}

/// <summary>Makes <see cref="Estimate{T}"/>.</summary>
public static class Estimate
{
    /// <summary>A computed value with its remarks.</summary>
    public static Estimate<T> Of<T>(T value, params ImmutableArray<EstimateNote> notes)
        where T : class => new(value, null, notes);

    /// <summary>No value, because an assumption of the method does not hold.</summary>
    public static Estimate<T> Refused<T>(Refusal kind)
        where T : class => Refused<T>(new NotComputable(kind));

    /// <summary>No value, because an assumption of the method does not hold, with what is to be said of it.</summary>
    public static Estimate<T> Refused<T>(NotComputable why)
        where T : class => new(null, why, []);
}
