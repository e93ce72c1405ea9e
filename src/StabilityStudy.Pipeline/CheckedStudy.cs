using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Queries;
using StabilityStudy.Pipeline.Notices;

namespace StabilityStudy.Pipeline;

/// <summary>A study while it is being collected: its queries, none of which asks for what is still to come, and its inventory.</summary>
/// <param name="Queries">Every query that is not answered.</param>
/// <param name="Answered">Those that study.toml answers.</param>
/// <param name="AnswersWithoutQuery">How many answers fit no query.</param>
/// <param name="Inventory">What was planned, what came and what is due; null when protocol.toml or study.toml cannot be read.</param>
/// <param name="Inputs">The rows that could be read; null with the inventory.</param>
public sealed record CheckedStudy(
    ImmutableArray<DataQuery> Queries,
    ImmutableArray<DataQuery> Answered,
    int AnswersWithoutQuery,
    CollectionInventory? Inventory,
    StudyInputs? Inputs
)
{
    /// <summary>Whether a query stops.</summary>
    public bool IsStopped => Queries.Any(query => query.Severity == Severity.Stop);

    /// <summary>Whether a signed notice ended the study without a conclusion.</summary>
    public bool IsEnded => Queries.Any(query => query.Kind == EndingQueries.StudyEnded);

    /// <summary>Checks a study at a moment.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="asOf">The moment, from the caller's clock or user.</param>
    public static CheckedStudy Of(StudyBytes files, DateTimeOffset asOf)
    {
        if (EndedStudies.QueryOf(files) is { } ended)
        {
            return new([ended], [], 0, null, null);
        }

        var (ofFiles, inputs, protocolSha256, sound) = Read(files);
        if (inputs is null)
        {
            if (sound is null)
            {
                return new(ofFiles, [], 0, null, null);
            }

            var soFar = CollectionCount.Of(sound, asOf, LinesInQuestion(sound, ofFiles));
            return new(WithoutComing(ofFiles, sound, soFar), [], 0, soFar, sound);
        }

        var (found, inventory) = StudyChecks.WhileCollecting(inputs, protocolSha256, asOf);
        ImmutableArray<DataQuery> queries =
        [
            .. WithoutComing(ofFiles, inputs, inventory),
            .. found,
        ];
        var answers = inputs.Facts.Answers.Select(answer => answer.Query).ToHashSet();
        var answered = queries
            .Where(query =>
                query.Severity != Severity.Stop && answers.Contains(QueryReference.Of(query))
            )
            .ToImmutableArray();
        return new(
            [.. queries.Where(query => !answered.Contains(query))],
            answered,
            answers.Except(answered.Select(QueryReference.Of)).Count(),
            inventory,
            inputs
        );
    }

    /// <summary>
    /// The queries about the files, and unless one stops the rows and the digest of the protocol alone: the files, as they came and in canonical form, are let go before the rows are
    /// checked. Where one stops, the rows that can be read.
    /// </summary>
    private static (
        ImmutableArray<DataQuery> Queries,
        StudyInputs? Inputs,
        string ProtocolSha256,
        StudyInputs? Sound
    ) Read(StudyBytes files)
    {
        var intake = StudyIntake.ReadCollecting(files, out var sound);
        return intake.TryGet(out var study)
            ? (
                intake.Queries,
                study.Inputs,
                study.Identity.HashOf(StudyBytes.ProtocolName) ?? "",
                null
            )
            : (intake.Queries, null, "", sound);
    }

    private static HashSet<int> LinesInQuestion(
        StudyInputs inputs,
        ImmutableArray<DataQuery> queries
    ) =>
        [
            .. queries
                .Where(query => query.Severity == Severity.Stop)
                .Select(query =>
                    StudyFileNames.CountedLine(
                        query.Source,
                        inputs.Facts.Files.Specimens,
                        inputs.Facts.Files.MoreSpecimens
                    )
                )
                .OfType<int>(),
        ];

    /// <summary>Without those that ask for what is to come: a tube of a specimen that waits has no results yet, and a run of today may get its results after its controls.</summary>
    private static ImmutableArray<DataQuery> WithoutComing(
        ImmutableArray<DataQuery> queries,
        StudyInputs inputs,
        CollectionInventory inventory
    )
    {
        var waiting = inventory
            .Tests.Where(test => test.IsOpen)
            .Select(test => test.Specimen)
            .ToHashSet();
        var ofToday = inputs
            .Controls.Where(row =>
                row.TestedAt.ToOffset(inventory.AsOf.Offset).Date == inventory.AsOf.Date
            )
            .Select(row => row.SourceRow)
            .ToHashSet();
        return
        [
            .. queries.Where(query =>
                query.Kind == RowQueries.TubeWithoutResults
                    ? query.Specimen is { Code: var code }
                        ? !waiting.Contains(code)
                        : waiting.Count == 0
                    : query.Kind != RowQueries.ControlRunUnknown
                        || StudyFileNames.CountedLine(
                            query.Source,
                            inputs.Facts.Files.Controls,
                            inputs.Facts.Files.MoreControls
                        )
                            is not { } line
                        || !ofToday.Contains(line)
            ),
        ];
    }
}
