using StabilityStudy.Core.Criteria;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads protocol.toml.</summary>
public static class ProtocolReader
{
    private const int Format = 1;

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

        var root = TomlTable.Root(entries, ProtocolKeys.Table, fileName, queries);
        FormatNumber.Check(root, ProtocolKeys.Format, Format);
        var criteria = Parts<Criterion?>.Read(root, ProtocolKeys.Criteria, CriterionReader.Read);
        var hasLimits = criteria.Items.Any(item => item.Table.Has(CriterionKeys.Limits));
        var draft = new ProtocolDraft(
            root,
            Code: root.Read(ProtocolKeys.Code),
            Version: root.Read(ProtocolKeys.Version),
            TimePoints: [.. root.Read(ProtocolKeys.TimePoints).Select(d => new TimePoint(d))],
            Tolerance: ReadTolerance(root.RequireTable(ProtocolKeys.Tolerance)),
            BaselineWithin: root.Read(ProtocolKeys.BaselineWithin),
            TubePlan: root.Read(ProtocolKeys.TubePlan),
            Replicates: root.Read(ProtocolKeys.Replicates),
            MinimumDays: root.Read(ProtocolKeys.MinimumDays),
            WindowStep: root.Read(ProtocolKeys.WindowStep),
            Conduct: ConductReader.Read(root),
            Signatories: Parts<Signatory>.Read(root, ProtocolKeys.Signatories, ReadSignatory),
            Storages: Parts<Storage>.Read(root, ProtocolKeys.Storages, StorageReader.Read),
            Groups: Parts<PatientGroup>.Read(root, ProtocolKeys.Groups, GroupReader.Read),
            Eligibility: GroupReader.ReadEligibility(root.RequireTable(ProtocolKeys.Eligibility)),
            Analytes: Parts<Analyte>.Read(root, ProtocolKeys.Analytes, AnalyteReader.Read),
            Limits: Parts<Limit>.Read(root, ProtocolKeys.Limits, LimitReader.Read, hasLimits),
            Criteria: criteria
        );
        ProtocolChecks.Check(draft);
        return draft;
    }

    private static Tolerance ReadTolerance(TomlTable table) =>
        new(Early: table.Read(ToleranceKeys.Early), Late: table.Read(ToleranceKeys.Late))
        {
            Later = [.. table.Tables(ToleranceKeys.Later).Select(LaterToleranceKeys.Read)],
        };

    private static Signatory ReadSignatory(TomlTable table) =>
        new(Role: table.Read(SignatoryKeys.Role), Meaning: table.Read(SignatoryKeys.Meaning));
}
