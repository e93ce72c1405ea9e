using System.Collections.Immutable;
using System.Globalization;
using StabilityStudy.Core.Conclusions;
using StabilityStudy.Core.Pairing;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;

namespace StabilityStudy.Core.Analysis;

/// <summary>What a time point's figures cannot tell apart or leave unseen, in words.</summary>
internal static class CellQueries
{
    public static IEnumerable<DataQuery> Of(Cell cell, StudyProtocol protocol) =>
        [
            .. ConfoundingQueries.Of(cell.Key, cell.Pairs),
            .. cell.OwnConclusion == Conclusion.Supported ? OfSupported(cell, protocol) : [],
        ];

    private static IEnumerable<DataQuery> OfSupported(Cell cell, StudyProtocol protocol)
    {
        if (cell.Criteria.All(result => result is BiasResult))
        {
            yield return Attention(
                "supported-by-mean-only",
                "protocol.toml",
                "supported by the mean change alone; a mean can stay where it is while single patients' results move",
                "Add a criterion of kind \"individual\" to the next protocol."
            );
        }

        if (cell.Estimates.CollectionDays < protocol.MinimumDays)
        {
            yield return Attention(
                "supported-on-few-days",
                StudyFileNames.Usual.Specimens,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"supported on {cell.Estimates.CollectionDays} collection days, fewer than the {protocol.MinimumDays} planned, because no mean was judged or both results of each pair are recorded in one run"
                ),
                "Check that the run codes are true, and that one day can stand for others."
            );
        }

        if (
            cell.Robustness.FirstOrDefault(line => line.Code == LeftOutPairs.CountedOutside) is
            { Changes: true } line
        )
        {
            yield return Attention(
                "left-out-pairs-could-overturn",
                StudyFileNames.Usual.Results,
                $"the conclusion rests on what was left out: {line.Question}, it would not be supported",
                "Check each pair left out, and that its reason does not depend on the result."
            );
        }

        DataQuery Attention(string code, string file, string message, string action) =>
            new(
                code,
                Severity.Attention,
                new(file, null, null),
                "",
                $"{cell.Key}: {message}.",
                action
            );
    }
}
