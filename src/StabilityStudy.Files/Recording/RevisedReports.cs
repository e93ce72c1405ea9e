using System.Text.Json;
using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Recording;

/// <summary>Whether the report that a revision replaces is among the reports of the record.</summary>
internal static class RevisedReports
{
    /// <summary>A query when the record names reports of the study, and none of them has the input digest that the revision states.</summary>
    /// <param name="record">Content of record.jsonl, whose chain holds.</param>
    /// <param name="revision">What study.toml states; null for the first report.</param>
    public static ImmutableArray<DataQuery> Check(
        ReadOnlyMemory<byte> record,
        ReportRevision? revision
    )
    {
        var digests = revision is null ? [] : DigestsOf(record);
        if (
            revision is null
            || digests.IsEmpty
            || digests.Any(digest => digest.StartsWith(revision.Replaces, StringComparison.Ordinal))
        )
        {
            return [];
        }

        var queries = new QueryList();
        queries.AddOwn(
            LockFileQueries.RevisionNotRecorded,
            new QuerySource(StudyBytes.FactsName, null, null),
            revision.Replaces
        );
        return queries.ToImmutable();
    }

    private static ImmutableArray<string> DigestsOf(ReadOnlyMemory<byte> record)
    {
        var digests = ImmutableArray.CreateBuilder<string>();
        foreach (var line in StudyRecord.Lines(record))
        {
            using var document = JsonDocument.Parse(line);
            var root = document.RootElement;
            if (root.GetProperty("action").GetString() == RecordAction.Report)
            {
                digests.Add(
                    InputDigest.Compute([
                        .. StudyRecord
                            .FilesOf(root, "inputs")
                            .Select(file => new FileHash(file.Key, file.Value)),
                    ])
                );
            }
        }

        return digests.ToImmutable();
    }
}
