using System.Diagnostics.CodeAnalysis;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.LongTerm;

/// <summary>Why a document was not renewed.</summary>
public enum RenewalRefusal
{
    /// <summary>It is not signed, a signature is not right, or something else than signing was done to it.</summary>
    DoesNotVerify,

    /// <summary>A signer or authority is not trusted, so that what vouches for them is not known.</summary>
    NotTrusted,

    /// <summary>Everything that was given is in the document, and no time stamp was asked for.</summary>
    NothingToAdd,

    /// <summary>The data added last have no archive time stamp yet, and more need one first.</summary>
    DataNotStamped,

    /// <summary>The document has no empty field for an archive time stamp.</summary>
    NoRoom,

    /// <summary>The time stamp authority gave no answer.</summary>
    TimeStampUnavailable,

    /// <summary>The time stamp authority's answer is no time stamp of this document.</summary>
    TimeStampInvalid,

    /// <summary>The time stamp with its certificates is larger than the room for it.</summary>
    TimeStampTooLarge,
}

/// <summary>The renewed document, or why it was not renewed: never both, never neither.</summary>
public sealed class RenewalResult
{
    private readonly ReadOnlyMemory<byte> _document;
    private readonly RenewalRefusal? _refusal;

    internal RenewalResult(
        ReadOnlyMemory<byte> document,
        bool keepsMore,
        TimeStampVerification? timeStamp
    ) => (_document, KeepsMore, TimeStamp) = (document, keepsMore, timeStamp);

    internal RenewalResult(RenewalRefusal refusal, string what) =>
        (_refusal, What) = (refusal, what);

    /// <summary>Whether certificates, lists or answers were added.</summary>
    public bool KeepsMore { get; }

    /// <summary>The archive time stamp that was added; null where none was.</summary>
    public TimeStampVerification? TimeStamp { get; }

    /// <summary>What is known about the refusal besides its kind; may be empty.</summary>
    public string What { get; } = "";

    /// <summary>Gives the renewed document, or the refusal when there is none.</summary>
    public bool TryGet(
        out ReadOnlyMemory<byte> document,
        [NotNullWhen(false)] out RenewalRefusal? refusal
    )
    {
        (document, refusal) = (_document, _refusal);
        return refusal is null;
    }
}
