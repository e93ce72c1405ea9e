namespace StabilityStudy.Core.Analysis;

/// <summary>How a number is typed wrongly.</summary>
internal enum SlipKind
{
    /// <summary>Two neighboring digits are exchanged: 13.4 for 31.4.</summary>
    DigitsExchanged,

    /// <summary>The decimal point is lost or in another place: ten times or a tenth.</summary>
    PointMoved,
}

/// <summary>
/// A result that stands out from the others of its specimen, and would not if it were typed in one other way. Standing out is measured by the logarithm of delayed ÷ baseline:
/// farther from the median of the specimens of its group at that time than six times their spread and than a tenth; fitting is within twice the spread. The spread is the
/// median absolute deviation (1.4826 times), and at least that of two results with the stated between-run CV, or of 1 %.
/// </summary>
/// <param name="Row">The result.</param>
/// <param name="Kind">What would make it fit.</param>
internal sealed record TypingSlip(ResultRow Row, SlipKind Kind)
{
    private const int FewestForMedian = 5;
    private const double SpreadsApart = 6;
    private const double LeastApart = 0.1;
    private const double SpreadsNear = 2;
    private const double OfNormal = 1.4826;
    private const double LeastSpread = 0.01;

    /// <summary>Every such result of a study.</summary>
    public static ImmutableArray<TypingSlip> Find(StudyRows rows) =>
        [
            .. rows
                .Inputs.Protocol.Analytes.AsParallel()
                .AsOrdered()
                .Select(analyte => OfAnalyte(analyte, rows))
                .AsEnumerable()
                .SelectMany(slips => slips)
                .OrderBy(slip => slip.Row.SourceRow),
        ];

    private static List<TypingSlip> OfAnalyte(Analyte analyte, StudyRows rows)
    {
        var logs = new Dictionary<(TestOccasion Occasion, string Group), List<double>>();
        var own = new List<Change>();
        foreach (var specimen in rows.Specimens)
        {
            Read(specimen, rows.Of(analyte.Id, specimen).Span, own);
            foreach (var change in own)
            {
                if (!logs.TryGetValue(change.Compared, out var same))
                {
                    logs.Add(change.Compared, same = []);
                }

                same.Add(change.Log);
            }
        }

        var usual = logs.ToDictionary(same => same.Key, same => Usual.Of(analyte, [.. same.Value]));
        var slips = new List<TypingSlip>();
        if (!logs.Any(same => same.Value.Exists(usual[same.Key].IsApart)))
        {
            return slips;
        }

        foreach (var specimen in rows.Specimens)
        {
            Read(specimen, rows.Of(analyte.Id, specimen).Span, own);
            if (own.Exists(change => usual[change.Compared].IsApart(change.Log)))
            {
                slips.AddRange(OfSpecimen([.. own], usual));
            }
        }

        return slips;
    }

    /// <summary>Reads the changes of a specimen from its first baseline into a list that held those of another.</summary>
    private static void Read(
        SpecimenRows specimen,
        ReadOnlySpan<ResultRow> results,
        List<Change> changes
    )
    {
        changes.Clear();
        ResultRow? baseline = null;
        foreach (var row in results)
        {
            baseline ??= row is { Occasion.IsBaseline: true, Result: MeasuredResult { Value: > 0 } }
                ? row
                : null;
        }

        if (baseline is null)
        {
            return;
        }

        var group = specimen.Tubes.IsEmpty ? "" : specimen.Tubes.Span[0].Group;
        foreach (var row in results)
        {
            if (row is { Occasion.IsBaseline: false, Result: MeasuredResult { Value: > 0 } })
            {
                changes.Add(new(baseline, row, group));
            }
        }
    }

    private static IEnumerable<TypingSlip> OfSpecimen(
        ImmutableArray<Change> own,
        Dictionary<(TestOccasion, string), Usual> usual
    )
    {
        var apart = own.Where(change => usual[change.Compared].IsApart(change.Log))
            .ToImmutableArray();

        // A wrong baseline makes every delayed result stand out.
        if (
            apart.Length > 1
            && apart.Length == own.Length
            && Ways(own[0].Baseline, other => own.All(change => Fits(change, change.From(other))))
                is { } ofBaseline
        )
        {
            return [new(own[0].Baseline, ofBaseline)];
        }

        return apart
            .Select(change =>
                Ways(change.Delayed, other => Fits(change, change.To(other))) is { } kind
                    ? new TypingSlip(change.Delayed, kind)
                    : null
            )
            .OfType<TypingSlip>();

        bool Fits(Change change, double log) => usual[change.Compared].IsNear(log);
    }

    private static SlipKind? Ways(ResultRow row, Func<decimal, bool> fits)
    {
        var value = ((MeasuredResult)row.Result).Value;
        return fits(value * 10) || fits(value / 10) ? SlipKind.PointMoved
            : Exchanged(value).Any(fits) ? SlipKind.DigitsExchanged
            : null;
    }

    /// <summary>The number with two neighboring digits exchanged, in every place; a first digit is no zero.</summary>
    private static IEnumerable<decimal> Exchanged(decimal value)
    {
        var text = value.ToString(CultureInfo.InvariantCulture).ToCharArray();
        int[] places = [.. Enumerable.Range(0, text.Length).Where(i => char.IsAsciiDigit(text[i]))];
        foreach (var (first, second) in places.Zip(places.Skip(1)))
        {
            char[] other = [.. text];
            (other[first], other[second]) = (text[second], text[first]);
            if (text[first] != text[second] && other[0] != '0')
            {
                yield return decimal.Parse(
                    other,
                    NumberStyles.AllowDecimalPoint,
                    CultureInfo.InvariantCulture
                );
            }
        }
    }

    private readonly record struct Change(ResultRow Baseline, ResultRow Delayed, string Group)
    {
        public double Log { get; } = LogOf(ValueOf(Delayed), ValueOf(Baseline));

        /// <summary>What it is compared with: the changes by the same time in the same group.</summary>
        public (TestOccasion Occasion, string Group) Compared => (Delayed.Occasion, Group);

        public double From(decimal baseline) => LogOf(ValueOf(Delayed), baseline);

        public double To(decimal delayed) => LogOf(delayed, ValueOf(Baseline));

        private static double LogOf(decimal delayed, decimal baseline) =>
            Math.Log((double)delayed / (double)baseline);

        private static decimal ValueOf(ResultRow row) => ((MeasuredResult)row.Result).Value;
    }

    /// <summary>How the specimens of a group change by a time; as good as nothing where there are few.</summary>
    private sealed record Usual(double Middle, double Spread)
    {
        /// <param name="analyte">The analyte.</param>
        /// <param name="logs">The changes, which are sorted.</param>
        public static Usual Of(Analyte analyte, double[] logs)
        {
            var least = Math.Max(
                LeastSpread,
                Math.Sqrt(2) * (double)(analyte.BetweenRunCvPercent ?? 0) / 100
            );
            if (logs.Length < FewestForMedian)
            {
                return new(0, least);
            }

            var middle = ChanceAgreement.Middle(logs);
            return new(
                middle,
                Math.Max(
                    least,
                    OfNormal
                        * ChanceAgreement.Middle([.. logs.Select(log => Math.Abs(log - middle))])
                )
            );
        }

        public bool IsApart(double log) =>
            Math.Abs(log - Middle) > Math.Max(LeastApart, SpreadsApart * Spread);

        public bool IsNear(double log) => Math.Abs(log - Middle) <= SpreadsNear * Spread;
    }
}
