namespace StabilityStudy.Core.Queries;

/// <summary>What the words of a data query need beside what was read: the same values give the same words.</summary>
/// <param name="texts">The values.</param>
public readonly struct QueryValues(params ImmutableArray<string> texts) : IEquatable<QueryValues>
{
    private readonly ImmutableArray<string> _texts = texts;

    /// <summary>The values; empty for most queries.</summary>
    public ImmutableArray<string> Items => _texts.IsDefault ? [] : _texts;

    /// <summary>Whether both have the same values in the same order.</summary>
    public bool Equals(QueryValues other) => Items.SequenceEqual(other.Items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is QueryValues other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Items.Length;

    /// <summary>Whether both have the same values.</summary>
    public static bool operator ==(QueryValues left, QueryValues right) => left.Equals(right);

    /// <summary>Whether they have other values.</summary>
    public static bool operator !=(QueryValues left, QueryValues right) => !left.Equals(right);
}
