using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads protocol.toml.</summary>
public static class ProtocolReader
{
    private const int Format = 1;
    private const int MostDays = 366;

    /// <summary>Reads a protocol and checks that it can be carried out and judged.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="fileName">Name of the file, for the queries.</param>
    /// <returns>The protocol, or every stop query.</returns>
    public static Outcome<StudyProtocol> Read(ReadOnlyMemory<byte> utf8, string fileName)
    {
        var queries = new QueryList();
        var draft = Read(utf8, fileName, queries);
        return queries.Conclude(draft?.ToProtocol());
    }

    /// <summary>Reads what can be read; null when the file is not TOML.</summary>
    internal static ProtocolDraft? Read(
        ReadOnlyMemory<byte> utf8,
        string fileName,
        QueryList queries
    )
    {
        if (TomlDocument.Read(utf8, fileName, queries) is not { } entries)
        {
            return null;
        }

        var root = TomlTable.Root(entries, ProtocolKeys.Root, fileName, queries);
        FormatNumber.Check(root, Format);
        var criteria = Parts<Criterion?>.Read(
            root,
            "criterion",
            ProtocolKeys.Criterion,
            CriterionReader.Read
        );
        var draft = new ProtocolDraft(
            root,
            Code: root.RequireText("code"),
            Version: root.RequireText("version"),
            TimePoints: [.. root.RequireDurations("time_points").Select(d => new TimePoint(d))],
            Tolerance: ReadTolerance(root.RequireTable("tolerance", ProtocolKeys.Tolerance)),
            BaselineWithin: root.RequireDuration("baseline_within"),
            TubePlan: root.RequireChoice("tube_plan", FileWords.TubePlans),
            Replicates: root.OptionalWhole("replicates", 1, 2) ?? 1,
            MinimumDays: root.RequireWhole("minimum_days", 2, MostDays),
            WindowStep: root.RequireDuration("window_step"),
            Conduct: ConductReader.Read(root),
            Signatories: Parts<Signatory>.Read(
                root,
                "signatories",
                ProtocolKeys.Signatory,
                ReadSignatory
            ),
            Storages: Parts<Storage>.Read(
                root,
                "storage",
                ProtocolKeys.Storage,
                StorageReader.Read
            ),
            Groups: Parts<PatientGroup>.Read(root, "group", ProtocolKeys.Group, GroupReader.Read),
            Eligibility: GroupReader.ReadEligibility(
                root.RequireTable("eligibility", ProtocolKeys.Eligibility)
            ),
            Analytes: Parts<Analyte>.Read(
                root,
                "analyte",
                ProtocolKeys.Analyte,
                AnalyteReader.Read
            ),
            Limits: Parts<Limit>.Read(
                root,
                "limit",
                ProtocolKeys.Limit,
                LimitReader.Read,
                required: criteria.Items.Any(item => item.Table.Has("limits"))
            ),
            Criteria: criteria
        );
        ProtocolChecks.Check(draft);
        return draft;
    }

    private static Tolerance ReadTolerance(TomlTable table) =>
        new(Early: table.RequireDuration("early"), Late: table.RequireDuration("late"));

    private static Signatory ReadSignatory(TomlTable table) =>
        new(Role: table.RequireText("role"), Meaning: table.RequireText("meaning"));
}
