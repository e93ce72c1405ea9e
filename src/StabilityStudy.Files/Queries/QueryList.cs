namespace StabilityStudy.Files.Queries;

/// <summary>
/// Collects the queries of one reading. Of one kind in one file only the first ones are kept word for word; the rest
/// are counted, so that a million bad rows neither fill the memory nor get lost.
/// </summary>
internal sealed class QueryList
{
    /// <summary>Queries of one kind in one file that are listed one by one; more would not be read by anybody.</summary>
    internal const int MostListed = 200;

    private const int LongestObserved = 120;
    private readonly List<((string File, QueryKind Kind) Of, DataQuery Query)> _listed = [];
    private readonly Dictionary<(string File, QueryKind Kind), int> _counts = [];

    /// <summary>Whether the study is being collected, so that nothing is wrong with a table without rows.</summary>
    public bool IsCollecting { get; init; }

    /// <summary>The names of the data files, by which a line that is counted through several files is told with its own.</summary>
    public Core.Study.StudyFileNames? Names { get; set; }

    /// <summary>How many stop queries were raised so far.</summary>
    public int StopCount { get; private set; }

    /// <summary>How many queries of some kinds were raised about a file.</summary>
    public int CountOf(string file, ImmutableArray<QueryKind> kinds) =>
        kinds.Sum(kind => _counts.GetValueOrDefault((file, kind)));

    /// <summary>Whether further queries of a kind about a file are counted only, so that their words need not be found.</summary>
    public bool IsFull(string file, QueryKind kind) =>
        _counts.GetValueOrDefault((file, kind)) >= MostListed;

    /// <summary>Raises a query.</summary>
    public void Add(
        QueryKind kind,
        QuerySource source,
        string observed,
        string message,
        string? action = null,
        QueriedSpecimen? specimen = null
    )
    {
        if (kind.Severity == Severity.Stop)
        {
            StopCount++;
        }

        if (Count(source.File, kind))
        {
            List(
                source.File,
                new DataQuery(kind, Shown(source), Shown(observed), message, action)
                {
                    Specimen = specimen,
                }
            );
        }
    }

    /// <summary>Raises a query whose kind gives it its words from a few values.</summary>
    public void AddOwn(
        QueryKind kind,
        QuerySource source,
        string observed,
        params ImmutableArray<string> values
    )
    {
        if (Count(source.File, kind))
        {
            List(
                source.File,
                StatedQuery.Of(kind, Shown(source), Shown(observed), values)
                    ?? throw new ArgumentException(
                        $"\"{kind.Code}\" has no words for these values.",
                        nameof(values)
                    )
            );
        }
    }

    /// <summary>An empty list for one of several checks that are done side by side.</summary>
    public QueryList Apart() => new() { IsCollecting = IsCollecting, Names = Names };

    /// <summary>Raises the queries that checks took apart, as if they had raised them here one after another.</summary>
    public void AddAll(ImmutableArray<QueryList> apart)
    {
        foreach (var list in apart)
        {
            AddAll(list);
        }
    }

    private void AddAll(QueryList apart)
    {
        StopCount += apart.StopCount;
        foreach (var (of, query) in apart._listed)
        {
            if (Count(of.File, of.Kind))
            {
                _listed.Add((of, query));
            }
        }

        foreach (var (of, count) in apart._counts)
        {
            _counts[of] += Math.Max(0, count - MostListed);
        }
    }

    /// <summary>Whether the query is among those listed one by one.</summary>
    private bool Count(string file, QueryKind kind)
    {
        var count = _counts.GetValueOrDefault((file, kind)) + 1;
        _counts[(file, kind)] = count;
        return count <= MostListed;
    }

    private void List(string file, DataQuery query) => _listed.Add(((file, query.Kind), query));

    /// <summary>Every query in the order in which it was raised, then what was counted but not listed.</summary>
    public ImmutableArray<DataQuery> ToImmutable() =>
        [
            .. _listed.Select(listed => listed.Query),
            .. _counts
                .Where(entry => entry.Value > MostListed)
                .Select(entry => More(entry.Key.File, entry.Key.Kind, entry.Value - MostListed)),
        ];

    /// <summary>Ends the reading: the value, or no value when a query stops.</summary>
    public Outcome<T> Conclude<T>(T? value)
        where T : class =>
        StopCount == 0 && value is not null
            ? Outcome.Of(value, ToImmutable())
            : Outcome.Stopped<T>(ToImmutable());

    /// <summary>Those of one kind and file that are counted only.</summary>
    internal static DataQuery More(string file, QueryKind kind, int count)
    {
        var text = count.ToString(CultureInfo.InvariantCulture);
        return new(
            kind,
            new QuerySource(file, null, null),
            "",
            $"And {text} more of this kind: {kind.Meaning}.",
            kind.Remedy
        )
        {
            Values = new QueryValues(text),
        };
    }

    /// <summary>What was read, as a query keeps it: it goes on into reports and files, and steers no reader's screen.</summary>
    internal static string Shown(string observed)
    {
        var shown = UnseenCharacters.Shown(observed);
        return shown.Length <= LongestObserved ? shown : shown[..LongestObserved] + "…";
    }

    private QuerySource Shown(QuerySource counted)
    {
        var source = Names?.Locate(counted) ?? counted;
        return source with
        {
            File = UnseenCharacters.Shown(source.File),
            Column = source.Column is { } column ? UnseenCharacters.Shown(column) : null,
        };
    }
}
