using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Json;
using StabilityStudy.Files.Locking;
using StabilityStudy.SignedPdf.Attachments;

namespace StabilityStudy.Pipeline;

/// <summary>The files that a report carries, so that it can be recomputed from the PDF alone.</summary>
internal static class AttachedFiles
{
    /// <summary>What an analysis starts from.</summary>
    public static ImmutableArray<Attachment> Sources(StudyBytes files, StudyIntakeResult study) =>
        [
            Source(
                StudyBytes.ProtocolName,
                "application/toml",
                "Protocol",
                files.Files[StudyBytes.ProtocolName]
            ),
            Source(
                StudyBytes.FactsName,
                "application/toml",
                "People, instruments, exclusions, deviations",
                files.Files[StudyBytes.FactsName]
            ),
            .. files.Files.TryGetValue(LockFile.Name, out var locks)
                ? [Source(LockFile.Name, "application/toml", "Locks of the protocol", locks)]
                : ImmutableArray<Attachment>.Empty,
            .. study
                .Identity.Inputs.Select(file => file.Name)
                .Where(IsLockedCopy)
                .Select(name =>
                    Source(
                        name,
                        "application/toml",
                        "An earlier version of the protocol, as it was locked",
                        files.Files[name]
                    )
                ),
            .. study
                .Identity.Inputs.Select(file => file.Name)
                .Where(name => name.EndsWith(".pdf", StringComparison.Ordinal))
                .Select(name =>
                    Source(
                        name,
                        "application/pdf",
                        "The protocol as it was signed before collection",
                        files.Files[name]
                    )
                ),
            .. study.Canonical.Files.Select(file =>
                Source(
                    file.Name,
                    "text/csv",
                    file.Name == StudyFileNames.Looks
                        ? "Earlier looks at other data of the study"
                        : "Data in canonical form",
                    file.Bytes
                )
            ),
        ];

    private static bool IsLockedCopy(string name) =>
        name != StudyBytes.ProtocolName
        && name != StudyBytes.FactsName
        && name.EndsWith(".toml", StringComparison.Ordinal);

    /// <summary>What it comes to: the bytes of analysis.json.</summary>
    public static Attachment Result(ReadOnlyMemory<byte> analysis) =>
        new(
            AnalysisJson.FileName,
            "application/json",
            $"Every figure, to {AnalysisJson.Digits} digits",
            AttachmentRelationship.Data,
            analysis
        );

    private static Attachment Source(
        string name,
        string mimeType,
        string description,
        ReadOnlyMemory<byte> bytes
    ) => new(name, mimeType, description, AttachmentRelationship.Source, bytes);
}
