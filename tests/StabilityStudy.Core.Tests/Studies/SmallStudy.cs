using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Looks;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Tests.Studies;

/// <summary>
/// A study in few words: each specimen one line of results, "30.0 | 30.5 | CLOT" for the baseline and the delayed
/// tubes. Specimens are S000, S001 …, collected at eight o'clock on ten days in turn; tube S000-6 is that of 6 h.
/// </summary>
internal sealed record SmallStudy(StudyInputs Inputs)
{
    private const int Days = 10;

    /// <summary>Specimens with the results as written; "-" is a missing row.</summary>
    public static SmallStudy Of(ImmutableArray<int> hours, IEnumerable<string> specimens)
    {
        var tubes = ImmutableArray.CreateBuilder<TubeRow>();
        var results = ImmutableArray.CreateBuilder<ResultRow>();
        foreach (var (line, number) in specimens.Select((line, number) => (line, number)))
        {
            var texts = line.Split('|', StringSplitOptions.TrimEntries);
            for (var i = 0; i < texts.Length; i++)
            {
                var hour = i == 0 ? 0 : hours[i - 1];
                var tube = SmallRows.Tube(number, hour, number % Days, tubes.Count + 2);
                tubes.Add(tube);
                if (texts[i] != "-")
                {
                    results.Add(SmallRows.Result(tube, hour, texts[i], results.Count + 2));
                }
            }
        }

        var facts = SmallProtocol.Facts with
        {
            EndedEarly = new("nobody else came", "LS1", new DateOnly(2026, 12, 31), 5),
        };
        return new(
            new StudyInputs(
                SmallProtocol.For(
                    tubes.Select(tube => tube.Specimen).Distinct().Count(),
                    [.. hours]
                ),
                facts,
                tubes.ToImmutable(),
                results.ToImmutable()
            )
        );
    }

    /// <summary>Specimens at 6 h whose changes are small and balanced, so that both criteria are met.</summary>
    public static SmallStudy Quiet(int specimens, params int[] hours) =>
        Of(
            hours.Length == 0 ? [6] : [.. hours],
            Enumerable
                .Range(0, specimens)
                .Select(i =>
                    string.Join(
                        " | ",
                        Enumerable
                            .Range(0, Math.Max(hours.Length, 1) + 1)
                            .Select(j => SmallRows.Text(30m + i % 7 + (j == 0 ? 0 : Wiggle(i + j))))
                    )
                )
        );

    public SmallStudy Protocol(Func<StudyProtocol, StudyProtocol> change) =>
        new(Inputs with { Protocol = change(Inputs.Protocol) });

    public SmallStudy Analyte(Func<Analyte, Analyte> change) =>
        Protocol(protocol => protocol with { Analytes = [.. protocol.Analytes.Select(change)] });

    public SmallStudy Storage(Func<Storage, Storage> change) =>
        Protocol(protocol => protocol with { Storages = [.. protocol.Storages.Select(change)] });

    public SmallStudy Criteria(params ImmutableArray<Criterion> criteria) =>
        Protocol(protocol => protocol with { Criteria = criteria });

    public SmallStudy Tubes(Func<TubeRow, TubeRow> change) =>
        new(Inputs with { Tubes = [.. Inputs.Tubes.Select(change)] });

    public SmallStudy Tube(int specimen, int hour, Func<TubeRow, TubeRow> change) =>
        Tubes(tube => tube.Tube == SmallRows.TubeCode(specimen, hour) ? change(tube) : tube);

    public SmallStudy Rows(Func<ResultRow, ResultRow> change) =>
        new(Inputs with { Results = [.. Inputs.Results.Select(change)] });

    public SmallStudy Row(int specimen, int hour, Func<ResultRow, ResultRow> change) =>
        Rows(row => row.Tube == SmallRows.TubeCode(specimen, hour) ? change(row) : row);

    public SmallStudy Result(int specimen, int hour, string text) =>
        Row(specimen, hour, row => row with { Result = SmallRows.Reported(text) });

    public SmallStudy WithoutRow(int specimen, int hour) =>
        new(
            Inputs with
            {
                Results =
                [
                    .. Inputs.Results.Where(row => row.Tube != SmallRows.TubeCode(specimen, hour)),
                ],
            }
        );

    /// <summary>One more row of the same tube, made from the row there is.</summary>
    public SmallStudy Again(int specimen, int hour, Func<ResultRow, ResultRow> change)
    {
        var row = Inputs.Results.Single(row => row.Tube == SmallRows.TubeCode(specimen, hour));
        return new(
            Inputs with
            {
                Results = Inputs.Results.Add(
                    change(row with { SourceRow = 1000 + Inputs.Results.Length, Replicate = 2 })
                ),
            }
        );
    }

    /// <summary>Excludes a specimen on its day of collection, before anything was tested.</summary>
    public SmallStudy Exclude(int specimen, int? hour) =>
        new(
            Inputs with
            {
                Facts = Inputs.Facts with
                {
                    Exclusions = Inputs.Facts.Exclusions.Add(
                        new Exclusion(
                            SmallRows.Code(specimen),
                            null,
                            hour is { } hours ? SmallProtocol.At(hours) : null,
                            "dropped",
                            "LS1",
                            new DateOnly(2026, 3, 2).AddDays(specimen % Days),
                            10
                        )
                        {
                            Time = new TimeOnly(8, 10),
                        }
                    ),
                },
            }
        );

    /// <summary>The same while specimens may still come: nothing states the end of the collection.</summary>
    public SmallStudy Collecting() =>
        new(Inputs with { Facts = Inputs.Facts with { EndedEarly = null } });

    /// <summary>The same after somebody looked at the data of another.</summary>
    public SmallStudy LookedAt(SmallStudy before, DateTimeOffset at) =>
        new(
            Inputs with
            {
                Looks = Inputs.Looks.Add(
                    new EarlierLook(
                        Inputs.Looks.Length + 1,
                        at,
                        "report",
                        "other data",
                        LookOf.Analysis(before.Analyze())
                    )
                ),
            }
        );

    /// <summary>States that a tube was not drawn, on the day of collection or later.</summary>
    public SmallStudy NotDrawn(int specimen, int hour, int daysLater = 0, string? storage = null) =>
        new(
            Inputs with
            {
                Facts = Inputs.Facts with
                {
                    NotDrawn = Inputs.Facts.NotDrawn.Add(
                        new NotDrawn(
                            SmallRows.Code(specimen),
                            SmallProtocol.At(hour),
                            storage,
                            "vein collapsed",
                            "LS1",
                            new DateOnly(2026, 3, 2).AddDays((specimen % Days) + daysLater),
                            30
                        )
                    ),
                },
            }
        );

    /// <summary>Documents a rerun with the one reason that the protocol then names.</summary>
    public SmallStudy Rerun(int specimen, int? hour, string reason = "instrument error") =>
        new SmallStudy(
            Inputs with
            {
                Facts = Inputs.Facts with
                {
                    Reruns = Inputs.Facts.Reruns.Add(
                        new Rerun(
                            SmallRows.Code(specimen),
                            "aPTT",
                            hour is { } hours ? SmallProtocol.At(hours) : null,
                            reason,
                            "LS1",
                            new DateOnly(2026, 3, 2),
                            20
                        )
                    ),
                },
            }
        ).Protocol(protocol => protocol with { RerunReasons = ["instrument error"] });

    public StudyAnalysis Analyze() =>
        StudyAnalyzer.Analyze(Inputs, new StudyIdentity("", [], []), [], "0");

    public Sequence Sequence() => Analyze().Sequences[0];

    public Cell Cell(int hour = 6) =>
        Sequence().Cells.Single(cell => cell.Key.TimePoint == SmallProtocol.At(hour));

    /// <summary>Plus and minus up to 0.4, adding up to nothing over eight.</summary>
    private static decimal Wiggle(int i) => (i % 8 - 3.5m) / 10 + (i % 2 == 0 ? 0.05m : -0.05m);
}
