using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.Core.Queries;

/// <summary>
/// The result of reading something: a value with the queries that do not stop, or the queries of which at least one
/// stops. There is no value beside a stop query.
/// </summary>
/// <typeparam name="T">What is read.</typeparam>
public sealed class Outcome<T>
    where T : class
{
    internal Outcome(T? value, ImmutableArray<DataQuery> queries)
    {
        Value = value;
        Queries = queries;
    }

    /// <summary>The value; null exactly when a query stops.</summary>
    public T? Value { get; }

    /// <summary>Every query, in the order in which it was found.</summary>
    public ImmutableArray<DataQuery> Queries { get; }

    /// <summary>Gives the value when nothing stops.</summary>
    public bool TryGet([NotNullWhen(true)] out T? value)
    {
        value = Value;
        return value is not null;
    }
}

/// <summary>Makes <see cref="Outcome{T}"/>.</summary>
public static class Outcome
{
    /// <summary>A value with queries of which none stops.</summary>
    /// <exception cref="ArgumentException">One of the queries stops.</exception>
    public static Outcome<T> Of<T>(T value, ImmutableArray<DataQuery> queries)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value);
        if (queries.Any(query => query.Severity == Severity.Stop))
        {
            throw new ArgumentException("A stop query leaves no value.", nameof(queries));
        }

        return new Outcome<T>(value, queries);
    }

    /// <summary>The value unless one of the queries stops.</summary>
    public static Outcome<T> Conclude<T>(T value, ImmutableArray<DataQuery> queries)
        where T : class =>
        queries.Any(query => query.Severity == Severity.Stop)
            ? Stopped<T>(queries)
            : Of(value, queries);

    /// <summary>No value.</summary>
    /// <exception cref="ArgumentException">None of the queries stops.</exception>
    public static Outcome<T> Stopped<T>(ImmutableArray<DataQuery> queries)
        where T : class
    {
        if (!queries.Any(query => query.Severity == Severity.Stop))
        {
            throw new ArgumentException("Without a stop query there is a value.", nameof(queries));
        }

        return new Outcome<T>(null, queries);
    }
}
