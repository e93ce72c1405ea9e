namespace StabilityStudy.Core.Specimens;

/// <summary>Rows put together by a number: those of a number stand together and keep their order.</summary>
internal sealed class GroupedRows<T>
{
    private readonly ImmutableArray<T> _rows;
    private readonly int[] _starts;

    private GroupedRows(ImmutableArray<T> rows, int[] starts, bool isInOrder)
    {
        _rows = rows;
        _starts = starts;
        IsInOrder = isInOrder;
    }

    /// <summary>Whether the rows stood so already.</summary>
    public bool IsInOrder { get; }

    /// <summary>The rows of a number.</summary>
    public ReadOnlyMemory<T> this[int number] => Of(number, number + 1);

    /// <summary>The rows of several numbers that follow each other.</summary>
    /// <param name="from">The first of them.</param>
    /// <param name="to">The one after the last.</param>
    public ReadOnlyMemory<T> Of(int from, int to) => _rows.AsMemory()[_starts[from].._starts[to]];

    /// <summary>Puts rows together.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="numbers">The number of each, from 0.</param>
    /// <param name="count">How many numbers there are.</param>
    public static GroupedRows<T> Of(ImmutableArray<T> rows, ReadOnlySpan<int> numbers, int count)
    {
        var starts = new int[count + 1];
        var (isInOrder, before) = (true, 0);
        foreach (var number in numbers)
        {
            starts[number + 1]++;
            isInOrder &= number >= before;
            before = number;
        }

        for (var i = 0; i < count; i++)
        {
            starts[i + 1] += starts[i];
        }

        return isInOrder
            ? new(rows, starts, isInOrder)
            : new(InOrder(rows, numbers, [.. starts]), starts, isInOrder);
    }

    private static ImmutableArray<T> InOrder(
        ImmutableArray<T> rows,
        ReadOnlySpan<int> numbers,
        int[] next
    )
    {
        var ordered = ImmutableArray.CreateBuilder<T>(rows.Length);
        ordered.Count = rows.Length;
        for (var i = 0; i < rows.Length; i++)
        {
            ordered[next[numbers[i]]++] = rows[i];
        }

        return ordered.MoveToImmutable();
    }
}
