using System.Diagnostics.CodeAnalysis;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>A key, or why there is none: never both, never neither.</summary>
public sealed class SigningKeyResult
{
    private readonly SigningKey? _key;
    private readonly SigningKeyProblem? _problem;

    internal SigningKeyResult(SigningKey key) => _key = key;

    internal SigningKeyResult(SigningKeyProblem problem) => _problem = problem;

    /// <summary>Gives the key, or the problem when there is none.</summary>
    public bool TryGet([NotNullWhen(true)] out SigningKey? key, out SigningKeyProblem problem)
    {
        key = _key;
        problem = _problem ?? default;
        return key is not null;
    }
}
