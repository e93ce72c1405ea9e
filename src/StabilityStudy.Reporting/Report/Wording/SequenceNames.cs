namespace StabilityStudy.Reporting.Report.Wording;

/// <summary>What a sequence's keys stand for.</summary>
internal sealed record SequenceNames(Analyte Analyte, PatientGroup Group, Storage Storage)
{
    /// <summary>What its times count from.</summary>
    public TimeOrigin Origin { get; init; }

    private const int MostWithFullNames = 3;

    /// <summary>Looks the keys up in the protocol.</summary>
    public static SequenceNames Of(StudyAnalysis analysis, Sequence sequence) =>
        Of(analysis.Protocol, sequence.Analyte, sequence.Group, sequence.Storage);

    /// <summary>The same for a row on which somebody decides.</summary>
    public static SequenceNames Of(StudyAnalysis analysis, ConcludedWindow row) =>
        Of(analysis.Protocol, row.Analyte, row.Group, row.Storage);

    private static SequenceNames Of(
        StudyProtocol protocol,
        string analyte,
        string group,
        string storage
    ) =>
        new(
            protocol.Analytes.Single(item => item.Id == analyte),
            protocol.Groups.Single(item => item.Id == group),
            protocol.Storages.Single(item => item.Id == storage)
        )
        {
            Origin = protocol.TimeOrigin,
        };

    /// <summary>Decimals of an estimate in the analyte's unit: one more than a result has.</summary>
    public int EstimateDecimals => Analyte.Decimals + 1;

    /// <summary>Analyte and storage in full words.</summary>
    public string What => $"{Analyte.Name}, {TradeWords.Of(Storage)}";

    /// <summary>The patient group, with its analyte where the study has several.</summary>
    public string Short(StudyAnalysis analysis) =>
        analysis.Protocol.Analytes.Length == 1 && analysis.Protocol.Storages.Length == 1
            ? Group.Name
            : Title(analysis);

    /// <summary>The name where many stand close together: the codes of analyte and group, "aPTT ufh".</summary>
    public string Code(StudyAnalysis analysis) =>
        analysis.Sequences.Length <= MostWithFullNames ? Short(analysis)
        : analysis.Protocol.Storages.Length > 1 ? $"{Analyte.Id} {Group.Id} {Storage.Id}"
        : $"{Analyte.Id} {Group.Id}";

    /// <summary>The sequence in one line, as short as the protocol allows: the storage is named only when there are several.</summary>
    public string Title(StudyAnalysis analysis) =>
        analysis.Protocol.Storages.Length > 1
            ? $"{Analyte.Id} · {Group.Name} · {TradeWords.Of(Storage)}"
            : $"{Analyte.Id} · {Group.Name}";
}
