using System.Text.Json;
using StabilityStudy.Core.Analysis;

namespace StabilityStudy.Files.Recording;

/// <summary>From which files the signed reports of a study were made, as its record tells: a report line names files and report, a sign line the report before and after.</summary>
internal static class SignedReports
{
    /// <summary>A query when the report signed last was made from other files than those at hand.</summary>
    /// <param name="record">Content of record.jsonl, whose chain holds.</param>
    /// <param name="inputs">The files at hand, in canonical form.</param>
    public static ImmutableArray<DataQuery> Check(
        ReadOnlyMemory<byte> record,
        ImmutableArray<FileHash> inputs
    )
    {
        if (LastSigned(record) is not { } signed)
        {
            return [];
        }

        var now = inputs.ToDictionary(file => file.Name, file => file.Sha256);
        var changed = signed
            .Inputs.Keys.Union(now.Keys)
            .Where(name => name != Core.Study.StudyFileNames.Looks)
            .Where(name => signed.Inputs.GetValueOrDefault(name) != now.GetValueOrDefault(name))
            .Order(StringComparer.Ordinal)
            .ToImmutableArray();
        if (changed.IsEmpty)
        {
            return [];
        }

        var queries = new QueryList();
        queries.AddOwn(
            LockFileQueries.SignedWithOtherFiles,
            new QuerySource(StudyRecord.Name, null, null),
            "",
            [signed.Day, .. changed]
        );
        return queries.ToImmutable();
    }

    private static (string Day, Dictionary<string, string> Inputs)? LastSigned(
        ReadOnlyMemory<byte> record
    )
    {
        var madeFrom = new Dictionary<string, Dictionary<string, string>>();
        (string, Dictionary<string, string>)? last = null;
        foreach (var line in StudyRecord.Lines(record))
        {
            using var document = JsonDocument.Parse(line);
            var root = document.RootElement;
            var inputs = StudyRecord.FilesOf(root, "inputs");
            var action = root.GetProperty("action").GetString();
            var files =
                action == RecordAction.Report ? inputs
                : action is RecordAction.Sign or RecordAction.Renew
                    ? inputs.Values.Select(madeFrom.GetValueOrDefault).FirstOrDefault()
                : null;
            if (files is null)
            {
                continue;
            }

            foreach (var made in StudyRecord.FilesOf(root, "outputs").Values)
            {
                madeFrom[made] = files;
            }

            if (action == RecordAction.Sign)
            {
                last = (DayOf(root), files);
            }
        }

        return last;
    }

    private static string DayOf(JsonElement line) =>
        line.GetProperty("at")
            .GetDateTimeOffset()
            .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
