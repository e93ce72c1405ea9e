using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.SignedPdf.Reading;

/// <summary>What was made from a file, or why nothing could be made: never both, never neither.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
public sealed class PdfResult<T>
{
    private readonly T? _value;

    internal PdfResult(T value) => _value = value;

    internal PdfResult(PdfFailure failure) => Failure = failure;

    /// <summary>Why there is no value; null exactly when there is one.</summary>
    public PdfFailure? Failure { get; }

    /// <summary>Gives the value, or the failure when there is none.</summary>
    public bool TryGet(
        [MaybeNullWhen(false)] out T value,
        [NotNullWhen(false)] out PdfFailure? failure
    )
    {
        value = _value;
        failure = Failure;
        return failure is null;
    }
}
