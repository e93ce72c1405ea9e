using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.Statistics;

/// <summary>A remark that belongs to a computed value, with the stable code under which METHODS.md explains it.</summary>
public sealed record EstimateNote(string Code, string Text);

/// <summary>Why a method gives no number for these data: a stable code of <see cref="AssumptionCode"/> and the reason in words.</summary>
public sealed record NotComputable(string Code, string Reason);

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
}

/// <summary>Makes <see cref="Estimate{T}"/>.</summary>
public static class Estimate
{
    /// <summary>A computed value with its remarks.</summary>
    public static Estimate<T> Of<T>(T value, params ImmutableArray<EstimateNote> notes)
        where T : class => new(value, null, notes);

    /// <summary>No value, because an assumption of the method does not hold.</summary>
    public static Estimate<T> Refused<T>(string code, string reason)
        where T : class => new(null, new NotComputable(code, reason), []);
}
