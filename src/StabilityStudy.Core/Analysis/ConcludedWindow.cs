using System.Runtime.CompilerServices;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// What the evidence supports for one row of the conclusions, on which somebody decides: an analyte, patient group and
/// storage; where instruments support different windows, each of them is a row of its own.
/// </summary>
/// <param name="Analyte">Key of the analyte.</param>
/// <param name="Group">Key of the patient group.</param>
/// <param name="Storage">Key of the storage.</param>
/// <param name="Supported">The supported window; null when none is.</param>
/// <param name="Today">What today's rule allows.</param>
/// <param name="Instruments">Instruments for which it holds, as far as recorded.</param>
/// <param name="Reagents">Reagent lots for which it holds, as far as recorded.</param>
/// <param name="Sites">Sites of these instruments, as far as stated.</param>
public sealed record ConcludedWindow(
    string Analyte,
    string Group,
    string Storage,
    TimeSpan? Supported,
    TimeSpan Today,
    ImmutableArray<string> Instruments,
    ImmutableArray<string> Reagents,
    ImmutableArray<string> Sites
)
{
    // Asked for by every row of a report, and found from every pair.
    private static readonly ConditionalWeakTable<
        StudyAnalysis,
        StrongBox<ImmutableArray<ConcludedWindow>>
    > s_known = [];

    /// <summary>Whether it is a row for one of several instruments, because they differ.</summary>
    public bool IsOfOneInstrument { get; init; }

    /// <summary>The rows of a study in the order of its sequences.</summary>
    public static ImmutableArray<ConcludedWindow> Of(StudyAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return s_known
            .GetValue(
                analysis,
                key => new([.. key.Sequences.SelectMany(sequence => Of(key, sequence))])
            )
            .Value;
    }

    private static IEnumerable<ConcludedWindow> Of(StudyAnalysis analysis, Sequence sequence) =>
        sequence.Parts.All(part => part.Window?.Time == sequence.Window?.Time)
            ? [Row(analysis, sequence, sequence.Window?.Time, _ => true)]
            : sequence.Parts.Select(part =>
                Row(analysis, sequence, part.Window?.Time, code => code == part.Code) with
                {
                    IsOfOneInstrument = true,
                }
            );

    private static ConcludedWindow Row(
        StudyAnalysis analysis,
        Sequence sequence,
        TimeSpan? supported,
        Func<string, bool> isOfRow
    )
    {
        var (used, lots) = (new HashSet<string>(), new HashSet<string>());
        var (lastInstrument, lastLot) = ("", "");
        foreach (
            var pair in sequence
                .Cells.SelectMany(cell => cell.Pairs)
                .Where(pair => isOfRow(pair.Instrument))
        )
        {
            Add(pair.Baseline);
            Add(pair.Delayed);
        }

        var instruments = Codes(used);
        return new(
            sequence.Analyte,
            sequence.Group,
            sequence.Storage,
            supported,
            analysis
                .Protocol.Analytes.Single(item => item.Id == sequence.Analyte)
                .StandardWindowOf(sequence.Group, sequence.Storage)
                .Time,
            instruments,
            Codes(lots),
            Codes(
                analysis
                    .Facts.Instruments.Where(item => instruments.Contains(item.Id))
                    .Select(item => item.Site ?? "")
            )
        );

        void Add(Measurement? measured)
        {
            if (measured is null)
            {
                return;
            }

            if (measured.Instrument != lastInstrument)
            {
                used.Add(lastInstrument = measured.Instrument);
            }

            if (measured.Lot != lastLot)
            {
                lots.Add(lastLot = measured.Lot);
            }
        }
    }

    /// <summary>Each code once; replicates on several are joined in one text.</summary>
    private static ImmutableArray<string> Codes(IEnumerable<string> texts) =>
        [
            .. texts
                .SelectMany(text => text.Split(Measurement.And))
                .Where(code => code.Length > 0)
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];
}
