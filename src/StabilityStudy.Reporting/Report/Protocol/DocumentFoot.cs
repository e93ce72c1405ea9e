using StabilityStudy.Core.Locking;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>What closes the page that is signed, and the document.</summary>
internal static class DocumentFoot
{
    /// <summary>What a signature decides, the cautions and the places to sign.</summary>
    public static IEnumerable<Block> Of(StudyProtocol protocol, ProtocolAmendment? amendment)
    {
        yield return amendment is null
            ? new KeyMessage(
                "What you decide by signing:",
                "the time points, the numbers of specimens, the limits and the criteria of this protocol. They cannot be changed after the first result has been seen. A change before that is an amendment: it states its reason and is signed again."
            )
            : new KeyMessage(
                "What you decide by signing:",
                "the changes above, and with them the whole protocol that follows, which replaces the earlier one. For results that somebody has seen already nothing can be changed."
            );
        yield return new Paragraph(
            "For qualified laboratory staff; the medical director decides. Local regulation, the manufacturer's instructions and the accreditor's rules prevail.",
            ParagraphStyle.Small
        );
        yield return new SignatureBoxes([
            .. protocol.Signatories.Select(signatory => new SignatureBox(
                TradeWords.Capital(signatory.Role),
                signatory.Meaning,
                "NOT SIGNED"
            )),
        ]);
    }

    /// <summary>What the document is.</summary>
    public static Section Cautions(ProtocolAmendment? amendment) =>
        new(
            "This document",
            StartsOnNewPage: false,
            [
                new Bullets([
                    amendment is null
                        ? "It was made from protocol.toml, which is attached to it. \"stability-study verify\" draws it again from that file and compares every byte."
                        : "It was made from the protocol, the earlier one and what the amendment states, all attached to it. \"stability-study verify\" finds the changes again, draws the pages again and compares every byte.",
                    "Signed by everybody named on page 1 before the first collection, and given to \"stability-study lock\", it is carried by the report and shows that the criteria were approved before the data.",
                    "Blood is handled under standard precautions. Study results never enter a patient's record. Not a medical device.",
                ]),
            ]
        )
        {
            IsLookedUp = true,
        };
}
