using StabilityStudy.Core.Controls;
using StabilityStudy.Core.Drift;
using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Looks;

namespace StabilityStudy.Core.Analysis;

/// <summary>From inputs to conclusions: pairs, estimates, criteria, and the sequence over time points.</summary>
public static class StudyAnalyzer
{
    /// <summary>Analyzes a study in which no query stops.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="identity">Which bytes it was read from.</param>
    /// <param name="intakeQueries">The queries that reading it gave.</param>
    /// <param name="toolVersion">Version of the program, printed in the report.</param>
    /// <exception cref="ArgumentException">A query stops, among those given or among those of <see cref="InputQueries"/>.</exception>
    public static StudyAnalysis Analyze(
        StudyInputs inputs,
        StudyIdentity identity,
        ImmutableArray<DataQuery> intakeQueries,
        string toolVersion
    )
    {
        var outcome = AnalyzeSound(inputs, identity, intakeQueries, toolVersion);
        return outcome.TryGet(out var analysis)
            ? analysis
            : throw new ArgumentException(
                "A stop query leaves nothing to analyze: "
                    + outcome.Queries.First(query => query.Severity == Severity.Stop).Message,
                nameof(intakeQueries)
            );
    }

    /// <summary>Analyzes a study unless a query stops, which <see cref="InputQueries"/> are asked for first.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="identity">Which bytes it was read from.</param>
    /// <param name="intakeQueries">The queries that reading it gave.</param>
    /// <param name="toolVersion">Version of the program, printed in the report.</param>
    /// <returns>The analysis with every query, or the queries about the inputs of which at least one stops.</returns>
    public static Outcome<StudyAnalysis> AnalyzeSound(
        StudyInputs inputs,
        StudyIdentity identity,
        ImmutableArray<DataQuery> intakeQueries,
        string toolVersion
    )
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(identity);
        var rows = new StudyRows(inputs);
        var before = intakeQueries.AddRange(InputQueries.OfRows(rows));
        if (before.Any(query => query.Severity == Severity.Stop))
        {
            return Outcome.Stopped<StudyAnalysis>(before);
        }

        var protocol = inputs.Protocol;
        var index = new SpecimenIndex(rows);
        var concluded = PairContext
            .All(inputs)
            .AsParallel()
            .AsOrdered()
            .Select(context =>
                Conclude(
                    index,
                    context,
                    [.. inputs.Controls.Where(row => row.Analyte == context.Analyte.Id)]
                )
            )
            .ToImmutableArray();
        var sequences = concluded.Select(item => item.Sequence).ToImmutableArray();
        var evidence = LockEvidence.Of(
            inputs.Locks,
            identity.HashOf("protocol.toml") ?? "",
            inputs.Tubes
        );
        var queries = LockQueries
            .Of(evidence, inputs.Facts.People)
            .Concat(concluded.SelectMany(item => item.Queries))
            .Concat(StudyQueries.Of(rows, sequences));
        var analysis = new StudyAnalysis(
            toolVersion,
            identity,
            evidence,
            protocol,
            inputs.Facts,
            [.. before, .. DataFiles.Named(queries.Distinct(), inputs.Facts.Files)],
            sequences
        )
        {
            Looks = inputs.Looks,
            Controls = protocol.Controls == ControlRule.EveryRun ? ControlSummary.Of(inputs) : [],
        };
        return Outcome.Of(analysis, analysis.Queries);
    }

    // Contexts know nothing of each other, so they are concluded side by side; order and figures stay the same.
    private static (Sequence Sequence, ImmutableArray<DataQuery> Queries) Conclude(
        SpecimenIndex index,
        PairContext context,
        ImmutableArray<ControlRow> controls
    )
    {
        var queries = ImmutableArray.CreateBuilder<DataQuery>();
        var (protocol, _, analyte, group, storage) = context;
        var assembled = PairAssembly
            .Assemble(index, context, queries)
            .Select(cell => AssembledCell.Of(cell.TimePoint, cell.Pairs, context, controls))
            .ToImmutableArray();
        var collection = CollectionStanding.Of(
            assembled.IsEmpty ? [] : assembled[0].Pairs,
            context
        );
        assembled =
        [
            .. assembled.Select(cell =>
                cell.Doubted(
                    LookDoubts.Of(
                        context.KeyAt(cell.TimePoint),
                        cell.Pairs,
                        collection,
                        context.Looks,
                        isPlannedPerInstrument: !context.Numbers.Instruments.IsEmpty
                    )
                )
            ),
        ];
        var parts = ScopeParts.Of(assembled, context, controls);
        var judged = JudgedCell.All(
            [.. assembled.Select(cell => cell.Doubted(ScopeParts.DoubtsAt(cell.TimePoint, parts)))],
            context,
            controls
        );
        var conclusions = CellEvaluation.InSequence([.. judged.Select(cell => cell.Own)]);
        var cells = judged
            .Select((cell, i) => cell.Concluded(conclusions[i], collection.Planned))
            .ToImmutableArray();
        var sequence = new Sequence(
            analyte.Id,
            group.Id,
            storage.Id,
            SupportedWindow.Longest(
                cells.Select(cell => (cell.Conclusion, cell.Key.TimePoint, cell.Pairs)),
                context
            ),
            DriftResult.Of(
                [
                    .. assembled
                        .Where((_, i) => judged[i].Doubt.Controls.IsEmpty)
                        .Select(cell => (cell.TimePoint, cell.Pairs)),
                ],
                protocol,
                analyte,
                group
            ),
            cells
        )
        {
            Collection = collection,
            Parts = parts,
        };
        return (sequence, queries.DrainToImmutable());
    }
}
