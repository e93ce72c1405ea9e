namespace StabilityStudy.Core.Analysis;

/// <summary>
/// Specimens with the same results at every time: as a rule rows that were copied. Results of few digits agree by chance, so a
/// query is raised only where chance hardly ever would:
/// <list type="bullet">
/// <item>for k specimens that agree in a of m analytes, the number of such groups that n specimens would have by chance is at most
/// C(n, k)·C(m, a)·p^(k − 1), where p is the product over these analytes of the chances of <see cref="ChanceAgreement"/>. Analytes of one specimen go together, so
/// that the chance of each further baseline is taken three times, as it is at a correlation of 0.94;</item>
/// <item>for the pairs that agree in one analyte, their number against its Poisson distribution, the mean of which is the sum of the chances of all pairs.</item>
/// </list>
/// One query names the specimens that go together, whatever the number of their analytes. A ratio that is computed from another analyte is no result of its own here.
/// </summary>
internal static class SameResultQueries
{
    internal static QueryKinds Kinds { get; } = new();

    // csharpier-ignore-start
    internal static readonly QueryKind SameResults = Kinds.Add("same-results", QueryRank.Measurement, "results of different specimens are alike in a way that copied rows would be", "compare with the instrument's own record: were rows copied?", point: "Results are alike.");
    // csharpier-ignore-end

    /// <summary>Rarer than this by chance in one study, agreement asks for an answer.</summary>
    public const double Rare = 0.005;

    /// <summary>By how much a baseline that agrees makes another of the same specimen more probable.</summary>
    private const int BaselinesTogether = 3;

    /// <summary>Of so many that agree in one analyte, each two are looked at in the others.</summary>
    private const int MostInPairs = 5;

    private const int MostSingle = 5;

    public static IEnumerable<DataQuery> Of(ImmutableArray<AnalyzedSeries> analytes)
    {
        var alike = analytes
            .AsParallel()
            .AsOrdered()
            .Select(analyzed => Alike(analyzed).ToImmutableArray())
            .AsEnumerable()
            .SelectMany(same => same)
            .ToImmutableArray();
        if (alike.IsEmpty)
        {
            return [];
        }

        var bySpecimen = alike
            .SelectMany(same => same.Series.Select(series => (series.Specimen, Same: same)))
            .ToLookup(item => item.Specimen, item => item.Same);
        var told = alike
            .Where(same => same.IsMoreThanChance)
            .Select(same => new Group(same.Specimens, [same]))
            .Concat(
                alike
                    .SelectMany(Seeds)
                    .Select(specimens => new Group(
                        specimens,
                        [.. bySpecimen[specimens[0]].Where(same => same.HasAll(specimens))]
                    ))
                    .Where(group => ExpectedByChance(group, analytes.Length) < Rare)
            );
        var groups = Together(told);
        return groups is { Length: > MostSingle } ? [Of(groups)] : groups.Select(Of);
    }

    /// <summary>The specimens of one analyte that agree, and how probable it was.</summary>
    private static IEnumerable<Agreement> Alike(AnalyzedSeries analyzed)
    {
        foreach (var comparable in analyzed.Series.GroupBy(series => series.Times))
        {
            var all = comparable.ToImmutableArray();
            var seen = new HashSet<ResultSeries>(all.Length, ResultSeries.ByValues);
            var again = all.Where(series => !seen.Add(series)).ToHashSet(ResultSeries.ByValues);
            var groups = all.Where(again.Contains)
                .GroupBy(series => series, ResultSeries.ByValues)
                .Select(same => same.OrderBy(series => series.Line).ToImmutableArray())
                .ToImmutableArray();
            if (groups.IsEmpty)
            {
                continue;
            }

            var step = analyzed.Step;
            var spreads = ChanceAgreement.Spreads(all);
            ImmutableArray<double> sorted =
            [
                .. all.Select(series => (double)series.Values[0]).Order(),
            ];
            var mean =
                all.Sum(series =>
                    ChanceAgreement.OfBaseline((double)series.Values[0], 1, sorted, step)
                    * ChanceAgreement.OfLater(series, spreads, step)
                )
                * (all.Length - 1)
                / 2;
            var isMore = ChanceOfAtLeast(groups.Sum(same => PairsOf(same.Length)), mean) < Rare;
            foreach (var same in groups)
            {
                yield return new(
                    analyzed.Analyte.Id,
                    same,
                    all.Length,
                    ChanceAgreement.OfBaseline(
                        (double)same[0].Values[0],
                        same.Length,
                        sorted,
                        step
                    ),
                    ChanceAgreement.OfLater(same[0], spreads, step),
                    isMore
                );
            }
        }
    }

    /// <summary>The whole group, and where it is small each two of it, which may agree in more analytes than all of them.</summary>
    private static IEnumerable<ImmutableArray<string>> Seeds(Agreement same)
    {
        var specimens = same.Specimens;
        yield return specimens;
        if (specimens.Length is > 2 and <= MostInPairs)
        {
            for (var first = 0; first < specimens.Length; first++)
            {
                for (var second = first + 1; second < specimens.Length; second++)
                {
                    yield return [specimens[first], specimens[second]];
                }
            }
        }
    }

    private static double ExpectedByChance(Group group, int analytes)
    {
        var baselines = group.In.Select(same => same.Baseline).Order().ToArray();
        var chance = group.In.Aggregate(baselines[0], (product, same) => product * same.Later);
        foreach (var baseline in baselines.AsSpan(1))
        {
            chance *= Math.Min(1, BaselinesTogether * baseline);
        }

        var specimens = group.Specimens.Length;
        return Choose(group.In.Max(same => same.Comparable), specimens)
            * Choose(analytes, group.In.Length)
            * Math.Pow(chance, specimens - 1);
    }

    /// <summary>Groups that share a specimen are one, so that none is named twice.</summary>
    private static ImmutableArray<Group> Together(IEnumerable<Group> groups)
    {
        var bySpecimen = new Dictionary<string, Group>(StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var joined = group
                .Specimens.Select(specimen => bySpecimen.GetValueOrDefault(specimen))
                .OfType<Group>()
                .Distinct()
                .Aggregate(
                    group,
                    (one, other) =>
                        ReferenceEquals(one, other)
                            ? one
                            : new(
                                [.. one.Specimens.Union(other.Specimens)],
                                [.. one.In.Union(other.In)]
                            )
                );
            foreach (var specimen in joined.Specimens)
            {
                bySpecimen[specimen] = joined;
            }
        }

        return [.. bySpecimen.Values.Distinct().OrderBy(group => group.Line)];
    }

    private static DataQuery Of(Group group) =>
        Query(
            group,
            $"{group.Analytes}: specimens {Doubts.ControlDoubts.Names(group.InOrder)} have the same result at every time."
        );

    private static DataQuery Of(ImmutableArray<Group> groups) =>
        Query(
            groups[0],
            string.Create(
                CultureInfo.InvariantCulture,
                $"{groups.Sum(group => group.Specimens.Length)} specimens in {groups.Length} groups have the same result at every time as another; the first are {Doubts.ControlDoubts.Names(groups[0].InOrder)} ({groups[0].Analytes})."
            )
        );

    private static DataQuery Query(Group first, string message) =>
        new(SameResults, DataFiles.ResultsAt(first.Line, null), "", message);

    /// <summary>Chance of at least so many events where a mean number is expected, by the Poisson distribution.</summary>
    private static double ChanceOfAtLeast(double count, double mean)
    {
        // A term of the Poisson sum that changes no digit of it.
        const double negligible = 1e-20;
        var term = Math.Exp(-mean);
        var below = 0.0;
        // Far above the mean further terms add nothing, however many there are.
        for (var events = 0.0; events < count && !(events > mean && term < negligible); events++)
        {
            below += term;
            term *= mean / (events + 1);
        }

        return Math.Max(0, 1 - below);
    }

    private static double PairsOf(int count) => Choose(count, 2);

    /// <summary>In how many ways some of all can be chosen.</summary>
    public static double Choose(int all, int some)
    {
        var ways = 1.0;
        for (var i = 0; i < some; i++)
        {
            ways *= (all - i) / (i + 1.0);
        }

        return ways;
    }

    /// <summary>Specimens that agree in one analyte.</summary>
    /// <param name="Analyte">The analyte.</param>
    /// <param name="Series">Their results, in order of lines.</param>
    /// <param name="Comparable">How many specimens have results at these times.</param>
    /// <param name="Baseline">The chance of another specimen with this baseline.</param>
    /// <param name="Later">The chance that all its later results agree then.</param>
    /// <param name="IsMoreThanChance">Whether more pairs agree in this analyte than chance would make.</param>
    private sealed record Agreement(
        string Analyte,
        ImmutableArray<ResultSeries> Series,
        int Comparable,
        double Baseline,
        double Later,
        bool IsMoreThanChance
    )
    {
        private HashSet<string>? _specimens;

        public ImmutableArray<string> Specimens { get; } =
        [.. Series.Select(series => series.Specimen)];

        public bool HasAll(ImmutableArray<string> specimens) =>
            specimens == Specimens
            || (
                specimens.Length <= Specimens.Length
                && specimens.All(
                    Specimens.Length <= MostInPairs
                        ? Specimens.Contains
                        : (_specimens ??= [.. Specimens]).Contains
                )
            );
    }

    /// <summary>Specimens that agree, and in what.</summary>
    private sealed class Group(
        ImmutableArray<string> specimens,
        ImmutableArray<Agreement> agreements
    )
    {
        public ImmutableArray<string> Specimens { get; } = specimens;

        public ImmutableArray<Agreement> In { get; } = agreements;

        public string Analytes => string.Join(", ", In.Select(same => same.Analyte).Distinct());

        /// <summary>The line of the last of them in an analyte, which is more likely a copy than the first.</summary>
        public int Line => Lines.Max(item => item.Line);

        public ImmutableArray<string> InOrder =>
            [.. Lines.OrderBy(item => item.Line).Select(item => item.Specimen).Distinct()];

        private IEnumerable<(int Line, string Specimen)> Lines =>
            In.SelectMany(same => same.Series)
                .Where(series => Specimens.Contains(series.Specimen))
                .Select(series => (series.Line, series.Specimen));
    }
}
