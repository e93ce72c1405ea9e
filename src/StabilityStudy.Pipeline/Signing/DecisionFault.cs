using StabilityStudy.Core.Protocol;

namespace StabilityStudy.Pipeline.Signing;

/// <summary>What is wrong with the decision that somebody signs with.</summary>
internal enum DecisionFault
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The one who decides states none.</summary>
    Missing,

    /// <summary>Somebody states one who does not decide.</summary>
    NotTheirs,

    /// <summary>Conditions, or a refusal, that are not said.</summary>
    WithoutText,

    /// <summary>A plain approval with a text, which could hold conditions.</summary>
    PlainWithText,
}

/// <summary>The rule by which a decision is signed, and by which a signed one is read.</summary>
internal static class DecisionFaults
{
    public static DecisionFault Of(
        StudyProtocol protocol,
        Signatory signatory,
        ApproverDecision? decision
    ) =>
        (protocol.Decides(signatory), decision) switch
        {
            (true, null) => DecisionFault.Missing,
            (false, not null) => DecisionFault.NotTheirs,
            (true, { Kind: not DecisionKind.Approve, Text: null }) => DecisionFault.WithoutText,
            (true, { Kind: DecisionKind.Approve, Text: not null }) => DecisionFault.PlainWithText,
            _ => DecisionFault.None,
        };
}
