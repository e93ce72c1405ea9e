using System.Collections;

namespace StabilityStudy.Core.Queries;

/// <summary>
/// The kinds of data query of one check. A kind enters the list as it is declared, so that none can be missing from the
/// catalogue; the list stands before the kinds.
/// </summary>
public sealed class QueryKinds : IEnumerable<QueryKind>
{
    private readonly List<QueryKind> _kinds = [];

    /// <summary>Declares a kind.</summary>
    /// <param name="code">Its code.</param>
    /// <param name="rank">What it means for the decision.</param>
    /// <param name="meaning">What is wrong, in words.</param>
    /// <param name="remedy">What to do about it, in words.</param>
    /// <param name="worded">As <see cref="QueryKind.Worded"/>.</param>
    /// <param name="point">As <see cref="QueryKind.Point"/>.</param>
    public QueryKind Add(
        string code,
        QueryRank rank,
        string meaning,
        string remedy,
        Func<DataQuery, DataQuery?>? worded = null,
        string? point = null
    )
    {
        var kind = new QueryKind(code, rank, meaning, remedy) { Worded = worded, Point = point };
        _kinds.Add(kind);
        return kind;
    }

    /// <inheritdoc/>
    public IEnumerator<QueryKind> GetEnumerator() => _kinds.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
