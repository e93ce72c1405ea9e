using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.SignedPdf.Signing;

/// <summary>What a step of signing gave, or why it gave nothing: never both, never neither.</summary>
/// <typeparam name="T">What the step gives.</typeparam>
public sealed class SigningResult<T>
{
    private readonly T? _value;

    internal SigningResult(T value) => _value = value;

    internal SigningResult(SigningRefusal refusal) => Refusal = refusal;

    internal SigningResult(SigningRefusalReason reason, string what)
        : this(new SigningRefusal(reason, what)) { }

    /// <summary>Why there is nothing; null exactly when there is something.</summary>
    public SigningRefusal? Refusal { get; }

    /// <summary>Gives the value, or the refusal when there is none.</summary>
    public bool TryGet(
        [MaybeNullWhen(false)] out T value,
        [NotNullWhen(false)] out SigningRefusal? refusal
    )
    {
        value = _value;
        refusal = Refusal;
        return refusal is null;
    }
}
