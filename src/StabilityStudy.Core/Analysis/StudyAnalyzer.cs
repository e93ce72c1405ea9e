using System.Collections.Immutable;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Drift;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Analysis;

/// <summary>From inputs to conclusions: pairs, estimates, criteria, and the sequence over time points.</summary>
public static class StudyAnalyzer
{
    /// <summary>Analyzes a study whose inputs gave no stop query.</summary>
    /// <param name="inputs">The study.</param>
    /// <param name="identity">Which bytes it was read from.</param>
    /// <param name="intakeQueries">The queries that reading it gave, none of which stops.</param>
    /// <param name="toolVersion">Version of the program, printed in the report.</param>
    public static StudyAnalysis Analyze(
        StudyInputs inputs,
        StudyIdentity identity,
        ImmutableArray<DataQuery> intakeQueries,
        string toolVersion
    )
    {
        var protocol = inputs.Protocol;
        var queries = intakeQueries.ToBuilder();
        var sequences = ImmutableArray.CreateBuilder<Sequence>();
        foreach (var analyte in protocol.Analytes)
        {
            foreach (var group in protocol.Groups)
            {
                foreach (var storage in protocol.Storages)
                {
                    sequences.Add(Conclude(inputs, analyte, group, storage, queries));
                }
            }
        }

        queries.AddRange(StudyQueries.Of(inputs, sequences.ToImmutable()));
        return new StudyAnalysis(
            StudyAnalysis.CurrentFormat,
            toolVersion,
            identity,
            LockLevel.NotLocked,
            protocol,
            inputs.Facts,
            [.. queries.Distinct()],
            sequences.ToImmutable()
        );
    }

    private static Sequence Conclude(
        StudyInputs inputs,
        Analyte analyte,
        PatientGroup group,
        Storage storage,
        ImmutableArray<DataQuery>.Builder queries
    )
    {
        var assembled = PairAssembly
            .Assemble(inputs, analyte, group, storage, queries)
            .Select(cell =>
                (cell.TimePoint, Pairs: OutlierFlags.Mark(cell.Pairs, analyte.Decimals))
            )
            .ToImmutableArray();
        var cells = ImmutableArray.CreateBuilder<Cell>();
        var window = default(SupportedWindow);
        var reached = true;
        foreach (var (timePoint, pairs) in assembled)
        {
            var criteria = CellEvaluation.Evaluate(pairs, inputs.Protocol, analyte, group);
            var own = CellEvaluation.Conclude(criteria);
            var conclusion = reached ? own : Conclusion.NotReached;
            reached &= conclusion == Conclusion.Supported;
            if (conclusion == Conclusion.Supported)
            {
                window =
                    SupportedWindow.Of(timePoint, pairs, analyte, inputs.Protocol.WindowStep)
                    ?? window;
            }

            cells.Add(
                new Cell(
                    new CellKey(analyte.Id, group.Id, storage.Id, timePoint),
                    conclusion,
                    own,
                    Disposition.Of(group.Specimens, pairs),
                    criteria,
                    CellEstimates.Of(
                        CellData.Of(pairs, analyte.Decimals),
                        inputs.Protocol,
                        analyte
                    ),
                    Robustness.Of(pairs, inputs.Protocol, analyte, group),
                    pairs
                )
            );
        }

        return new Sequence(
            analyte.Id,
            group.Id,
            storage.Id,
            window,
            DriftResult.Of(assembled, inputs.Protocol, analyte, group),
            cells.ToImmutable()
        );
    }
}
