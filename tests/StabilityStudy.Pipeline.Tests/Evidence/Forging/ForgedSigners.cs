using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.SignedPdf.Signing;
using StabilityStudy.SignedPdf.Stamps;

namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>Revisions in the right form, signed by somebody, at a time or with a statement that the rules of signing forbid.</summary>
internal static class ForgedSigners
{
    private const string NotSigned = "is not what was signed";
    private const string Malformed = "not written as this program writes it";

    private static readonly ApproverDecision s_approval = ForgedRevision.ApprovalOf(
        ForgedRevision.Analysis
    );

    private static readonly Lazy<ImmutableArray<Signer>> s_oneKey = new(() =>
        Signer.OfOneKey("Lab Scientist One", "Medical Director One")
    );

    /// <summary>Those whose certificates are trusted beside the two of the example.</summary>
    public static ImmutableArray<Signer> OneKey => s_oneKey.Value;

    public static IEnumerable<ForgedFile> All { get; } =
    [
        Stamped("a stamp with another name", "Medical Director One", "Somebody Else"),
        Stamped("a stamp with another decision", "Decision: approved", "Decision: declined: no"),
        Stamped("a stamp with another date", "Signed 2026-06-01", "Signed 2026-05-30"),
        Stamped("a stamp with another meaning", "approver: approves", "approver: has seen"),
        Stating(
            "a key of the statement given twice",
            json =>
                json.Replace("\"role\"", "\"role\":\"author\",\"role\"", StringComparison.Ordinal),
            Malformed
        ),
        Stating(
            "an unknown key of the statement",
            json => json.Replace("\"role\"", "\"more\":1,\"role\"", StringComparison.Ordinal),
            Malformed
        ),
        Stating("a statement that is no JSON", _ => "approved", Malformed),
        Stating("a statement with spaces", json => json + " ", Malformed),
        new(
            "no statement",
            1,
            "states no role",
            () => ByApprover(ForgedRevision.Approver with { Statement = null })
        ),
        new(
            "a statement about another study",
            1,
            "meant for another study",
            () =>
                ByApprover(
                    ForgedRevision.ContentOf(
                        1,
                        EvidenceExample.Director,
                        s_approval,
                        digest: new string('0', 64)
                    )
                )
        ),
        Rule(
            "a statement of another role",
            s_approval,
            "says to sign as author",
            statement => statement with { Role = "author" }
        ),
        Rule("an approver without a decision", null, "states no decision"),
        Rule("a plain approval with a text", s_approval with { Reason = "to 40 h" }, "to 40 h"),
        Rule(
            "a window longer than supported",
            s_approval with
            {
                Kind = DecisionKind.Conditions,
                Reason = "the drift",
                Windows =
                [
                    .. s_approval.Windows.Select(window =>
                        window with
                        {
                            Approved = TimeSpan.FromHours(40),
                        }
                    ),
                ],
            },
            "longer than the data in the report support"
        ),
        Rule(
            "a window of rows that the report does not conclude",
            s_approval with
            {
                Windows =
                [
                    .. s_approval.Windows.Select(window =>
                        window with
                        {
                            Row = window.Row with { Supported = TimeSpan.FromHours(40) },
                            Approved = TimeSpan.FromHours(40),
                        }
                    ),
                ],
            },
            "are not those that the data in the report conclude"
        ),
        Rule(
            "windows in force before they were approved",
            s_approval with
            {
                Effective = DateOnly.FromDateTime(EvidenceExample.Now.DateTime).AddDays(-1),
            },
            "in force before the decision was signed"
        ),
        Rule(
            "conditions that no row names",
            s_approval with
            {
                Conditions = ["closed tubes"],
            },
            "contradict each other"
        ),
        Rule(
            "a refusal without a reason",
            s_approval with
            {
                Kind = DecisionKind.Decline,
                Windows = [.. s_approval.Windows.Select(window => window with { Approved = null })],
            },
            "without saying why"
        ),
        Rule(
            "a signature by a later version over a report of this one",
            s_approval,
            "without accepting",
            statement => statement with { ToolVersion = "99.0.0" }
        ),
        new(
            "a decision by the author",
            1,
            "does not decide on the conclusion",
            () => ByAuthor(ForgedRevision.ContentOf(0, EvidenceExample.Author, s_approval))
        ),
        new(
            "another meaning than that of the protocol",
            1,
            "approver: approves its conclusion",
            () => ByApprover(ForgedRevision.Approver with { Reason = "approver: has seen it" })
        ),
        new(
            "a signature before the last result",
            1,
            "before the last result",
            () => ByAuthor(At(0, EvidenceExample.Author, EvidenceExample.Now.AddDays(-25)))
        ),
        new(
            "a signature of a time that has not come",
            1,
            "lies after this verification",
            () => ByApprover(At(1, EvidenceExample.Director, EvidenceExample.Now.AddDays(20)))
        ),
        new(
            "the approver alone",
            1,
            "the author signs before the approver",
            () =>
                ForgedRevision.Sign(
                    EvidenceExample.Unsigned,
                    ForgedRevision.Approver,
                    EvidenceExample.Director
                )
        ),
        new(
            "the approver before the author",
            1,
            "the author signs before the approver",
            () =>
                ForgedRevision.Sign(
                    ForgedRevision.Sign(
                        EvidenceExample.Unsigned,
                        ForgedRevision.Approver,
                        EvidenceExample.Director
                    ),
                    ForgedRevision.Author,
                    EvidenceExample.Author
                )
        ),
        new(
            "the author in the place of the approver",
            1,
            "in the place of the approver",
            () =>
                ByApprover(
                    ForgedRevision.Author with
                    {
                        FieldName = SignatoryFields.NameOf(1),
                    },
                    EvidenceExample.Author
                )
        ),
        new(
            "one certificate for two roles",
            1,
            "the same key has signed before",
            () =>
                ByApprover(
                    ForgedRevision.ContentOf(1, EvidenceExample.Author, s_approval),
                    EvidenceExample.Author
                )
        ),
        new(
            "two certificates for one key",
            1,
            "the same key has signed before",
            () =>
                ForgedRevision.Sign(
                    ForgedRevision.Sign(
                        EvidenceExample.Unsigned,
                        ForgedRevision.ContentOf(0, OneKey[0], null),
                        OneKey[0]
                    ),
                    ForgedRevision.ContentOf(1, OneKey[1], s_approval),
                    OneKey[1]
                )
        ),
    ];

    private static SignatureContent At(int index, Signer signer, DateTimeOffset at) =>
        ForgedRevision.ContentOf(index, signer, index == 0 ? null : s_approval, at: at);

    private static byte[] ByApprover(SignatureContent content, Signer? signer = null) =>
        ForgedRevision.Sign(
            EvidenceExample.SignedOnce,
            content,
            signer ?? EvidenceExample.Director
        );

    private static byte[] ByAuthor(SignatureContent content) =>
        ForgedRevision.Sign(EvidenceExample.Unsigned, content, EvidenceExample.Author);

    private static ForgedFile Rule(
        string name,
        ApproverDecision? decision,
        string words,
        Func<SignedStatement, SignedStatement>? stating = null
    ) =>
        new(
            name,
            1,
            words,
            () =>
                ByApprover(ForgedRevision.ContentOf(1, EvidenceExample.Director, decision, stating))
        );

    private static ForgedFile Stating(string name, Func<string, string> change, string words) =>
        new(
            name,
            1,
            words,
            () =>
            {
                var content = ForgedRevision.Approver;
                return ByApprover(content with { Statement = change(content.Statement!) });
            }
        );

    private static ForgedFile Stamped(string name, string from, string to) =>
        new(
            name,
            1,
            NotSigned,
            () =>
            {
                var content = ForgedRevision.Approver;
                Assert.Contains(
                    content.Stamp.Lines,
                    line => line.Text.Contains(from, StringComparison.Ordinal)
                );
                return ByApprover(
                    content with
                    {
                        Stamp = content.Stamp with
                        {
                            Lines =
                            [
                                .. content.Stamp.Lines.Select(line => new StampLine(
                                    line.Text.Replace(from, to, StringComparison.Ordinal),
                                    line.Size
                                )),
                            ],
                        },
                    }
                );
            }
        );
}
