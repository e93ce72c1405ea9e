using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Reporting.Report.Record;

/// <summary>What the files do not say of specimens, tubes, spinning, storage, runs and money.</summary>
internal static class HandlingGaps
{
    private const string NotInFiles = " not in the files";

    /// <summary>Source, selection and ethics.</summary>
    public static string? OfSubjects(StudyAnalysis analysis)
    {
        var stated = analysis.Facts.SpecimenSource;
        return NotStated(
            ("source of specimens", stated?.Source),
            ("how they were chosen", stated?.Selection),
            ("consent or ethics", stated?.Ethics)
        );
    }

    /// <summary>Why so many specimens.</summary>
    public static string? OfNumbers(StudyAnalysis analysis) =>
        analysis.Protocol.Groups.All(group => group.WhySoMany is not null)
            ? null
            : "why so many: see the protocol's criteria";

    /// <summary>Tube and order of draw.</summary>
    public static string? OfCollection(StudyAnalysis analysis) =>
        Requirement.Together(
            analysis.Facts.CollectionTube is null
                ? "tube type and additive are" + NotInFiles
                : null,
            analysis.Protocol.Draw is null
                    ? "order of draw, where recorded, stands in specimens.csv"
                : analysis.Queries.Any(query => query.Kind == DrawQueries.DrawNotRecorded)
                    ? "what specimens.csv does not record of the draw"
                : null
        );

    /// <summary>Spinning.</summary>
    public static string? OfProcessing(StudyAnalysis analysis) =>
        analysis.Facts.Spinning is null ? "speed and duration of spinning are" + NotInFiles : null;

    /// <summary>Temperatures, and how portions were thawed.</summary>
    public static string? OfStorage(StudyAnalysis analysis)
    {
        string[] without =
        [
            .. analysis
                .Protocol.Storages.Select(storage => storage.Id)
                .Where(id => analysis.Facts.Temperatures.All(item => item.Storage != id)),
        ];
        return Requirement.Together(
            without.Length == 0 ? null
                : without.Length == analysis.Protocol.Storages.Length
                    ? "a temperature record: none was seen, the range is the planned one"
                : "a temperature record of " + string.Join(", ", without),
            analysis is { Protocol.Freezing: not null, Facts.Thawing: null }
                ? "how portions were thawed is" + NotInFiles
                : null
        );
    }

    /// <summary>Which results share a run.</summary>
    public static string? OfRuns(StudyAnalysis analysis)
    {
        var without = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .Count(pair =>
                pair.CountsForAgreement
                && (pair.Baseline is { Run.Length: 0 } || pair.Delayed is { Run.Length: 0 })
            );
        return without == 0
            ? null
            : $"the run of {Core.Queries.Counted.Of(without, "pair")} is not recorded";
    }

    /// <summary>Funding and interests.</summary>
    public static string? OfMoney(StudyAnalysis analysis) =>
        NotStated(("funding", analysis.Facts.Funding), ("interests", analysis.Facts.Interests));

    private static string? NotStated(params (string What, string? Stated)[] facts)
    {
        string[] missing = [.. facts.Where(fact => fact.Stated is null).Select(fact => fact.What)];
        return missing.Length == 0 ? null : $"{string.Join(", ", missing)}:{NotInFiles}";
    }
}
