using System.Collections.Immutable;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;

namespace StabilityStudy.Core.Analysis;

/// <summary>
/// The data queries of a study without any that would give a result away: fit for use while specimens are still being
/// collected, when nobody may know how the figures look.
/// </summary>
public static class StudyChecks
{
    /// <summary>Every such query; when one stops, only those about the tubes.</summary>
    public static ImmutableArray<DataQuery> Of(StudyInputs inputs)
    {
        var stopping = InputQueries.Of(inputs);
        if (!stopping.IsEmpty)
        {
            return stopping;
        }

        var queries = ImmutableArray.CreateBuilder<DataQuery>();
        var index = new SpecimenIndex(inputs);
        foreach (var context in PairContext.All(inputs))
        {
            foreach (var (timePoint, pairs) in PairAssembly.Assemble(index, context, queries))
            {
                var key = new CellKey(
                    context.Analyte.Id,
                    context.Group.Id,
                    context.Storage.Id,
                    timePoint
                );
                queries.AddRange(pairs.SelectMany(pair => PairQueries.Of(key, pair)));
                queries.AddRange(ConfoundingQueries.Of(key, pairs));
            }
        }

        queries.AddRange(RecordQueries.Of(inputs));
        return [.. DataFiles.Named(queries.Distinct(), inputs.Facts.Files)];
    }
}
