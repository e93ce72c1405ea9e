using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Locking;
using StabilityStudy.Files.Queries;
using StabilityStudy.Files.Recording;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Verification;

/// <summary>
/// The record of the study held against the signatures: each states the record's last line at its time, so that lines which were cut off or changed since show, and locks
/// that the record names and the report leaves out.
/// </summary>
internal static class RecordComparison
{
    /// <param name="record">Content of record.jsonl; null where it was not given.</param>
    /// <param name="signatures">The signatures of the report.</param>
    /// <param name="locks">What the report's locks say.</param>
    /// <param name="inputs">The files in the report.</param>
    /// <param name="stated">The queries that the report states: what it says against itself need not be said twice.</param>
    public static IEnumerable<(PartOutcome, string)> Of(
        ReadOnlyMemory<byte>? record,
        ImmutableArray<SignatureVerification> signatures,
        LockEvidence locks,
        StudyBytes? inputs,
        ImmutableArray<DataQuery> stated
    )
    {
        ImmutableArray<(string Who, string Line)> lines =
        [
            .. signatures
                .Where(signature => signature.Holds)
                .Select(signature => (SignaturePart.Who(signature), LineOf(signature)))
                .Where(pair => pair.Item2 is not null)
                .Select(pair => (pair.Item1, pair.Item2!)),
        ];
        return record switch
        {
            null => lines.Select(pair =>
                (
                    PartOutcome.Holds,
                    $"{pair.Who}: the record of the study ended with the line {pair.Line} (SHA-256) when this was signed. With the option --record and {StudyRecord.Name}, verify shows whether lines were cut off or changed since."
                )
            ),
            { } given => OfGiven(
                given,
                [
                    .. lines.Select(pair =>
                        (pair.Who, pair.Line, StudyRecord.Until(given, pair.Line))
                    ),
                ],
                locks,
                inputs,
                stated
            ),
        };
    }

    private static IEnumerable<(PartOutcome, string)> OfGiven(
        ReadOnlyMemory<byte> record,
        ImmutableArray<(
            string Who,
            string Line,
            (ReadOnlyMemory<byte> UpTo, int Number, int Following)? Found
        )> lines,
        LockEvidence locks,
        StudyBytes? inputs,
        ImmutableArray<DataQuery> stated
    ) =>
        [
            .. StudyRecord
                .Check(record, lockSha256: null)
                .Where(query => query.Kind == LockFileQueries.RecordChainBroken)
                .Select(Sentence),
            .. lines.Select(line =>
                line.Found is { } found
                    ? (
                        PartOutcome.Holds,
                        FormattableString.Invariant(
                            $"{line.Who}: line {found.Number} of the study's record was its last one when this was signed, as the signature states. Lines added since: {found.Following}."
                        )
                    )
                    : (
                        PartOutcome.Fails,
                        $"{line.Who}: the study's record has no line {line.Line} (SHA-256), its last one when this was signed. Lines were cut off or changed since, or it is the record of another study."
                    )
            ),
            .. lines.Select(line => line.Found).MaxBy(found => found?.Number) is { } newest
            && inputs is not null
                ? AtSigning(newest.UpTo, locks, inputs)
                    .Where(query => stated.All(said => said.Kind != query.Kind))
                    .Select(Sentence)
                : [],
        ];

    private static string? LineOf(SignatureVerification signature) =>
        SignedStatement.Read(signature.Statement) is StatementReading.Read { Statement: var said }
            ? said.RecordSha256
            : null;

    /// <summary>The locks as the record has them up to the newest line that a signature vouches for.</summary>
    private static IEnumerable<DataQuery> AtSigning(
        ReadOnlyMemory<byte> record,
        LockEvidence locks,
        StudyBytes inputs
    ) =>
        StudyRecord
            .Check(
                record,
                inputs.Files.TryGetValue(LockFile.Name, out var bytes)
                    ? InputDigest.Sha256(bytes.Span)
                    : null,
                locks.Locks.Length
            )
            .Where(query => query.Kind != LockFileQueries.RecordChainBroken);

    private static (PartOutcome, string) Sentence(DataQuery query) =>
        (
            query.Kind == LockFileQueries.LockNotRecorded
                ? PartOutcome.NotChecked
                : PartOutcome.Fails,
            $"The study's record, compared with the report: {query.Source}: {query.Message}"
        );
}
