using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>The signed document, or why it was not signed: never both, never neither.</summary>
public sealed class SigningResult
{
    private readonly ReadOnlyMemory<byte> _document;

    internal SigningResult(ReadOnlyMemory<byte> document) => _document = document;

    internal SigningResult(SigningRefusalReason reason, string what) =>
        Refusal = new SigningRefusal(reason, what);

    /// <summary>Why there is no signed document; null exactly when there is one.</summary>
    public SigningRefusal? Refusal { get; }

    /// <summary>Gives the signed document, or the refusal when there is none.</summary>
    public bool TryGet(
        out ReadOnlyMemory<byte> document,
        [NotNullWhen(false)] out SigningRefusal? refusal
    )
    {
        document = _document;
        refusal = Refusal;
        return refusal is null;
    }
}
