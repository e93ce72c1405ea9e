using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>One reason why a chain of certificates is not trusted.</summary>
/// <param name="Problem">What is wrong.</param>
/// <param name="Certificate">With which certificate of the chain.</param>
public sealed record ChainFault(ChainProblem Problem, CertificateFacts Certificate)
{
    /// <summary>What is wrong by one status of the platform; null for none.</summary>
    internal static ChainProblem? Of(X509ChainStatusFlags status) =>
        status switch
        {
            X509ChainStatusFlags.NoError => null,
            X509ChainStatusFlags.PartialChain => ChainProblem.IssuerMissing,
            X509ChainStatusFlags.UntrustedRoot => ChainProblem.NotInTrustStore,
            X509ChainStatusFlags.NotTimeValid
            or X509ChainStatusFlags.NotTimeNested
            or X509ChainStatusFlags.CtlNotTimeValid => ChainProblem.NotValidThen,
            X509ChainStatusFlags.NotSignatureValid or X509ChainStatusFlags.CtlNotSignatureValid =>
                ChainProblem.NotSignedByIssuer,
            X509ChainStatusFlags.NotValidForUsage or X509ChainStatusFlags.CtlNotValidForUsage =>
                ChainProblem.ForOtherUses,
            X509ChainStatusFlags.InvalidBasicConstraints
            or X509ChainStatusFlags.InvalidPolicyConstraints
            or X509ChainStatusFlags.NoIssuanceChainPolicy
            or X509ChainStatusFlags.InvalidNameConstraints
            or X509ChainStatusFlags.HasNotPermittedNameConstraint
            or X509ChainStatusFlags.HasExcludedNameConstraint => ChainProblem.IssuerNotEntitled,
            X509ChainStatusFlags.Cyclic
            or X509ChainStatusFlags.InvalidExtension
            or X509ChainStatusFlags.HasNotSupportedNameConstraint
            or X509ChainStatusFlags.HasNotDefinedNameConstraint
            or X509ChainStatusFlags.HasNotSupportedCriticalExtension => ChainProblem.NotUnderstood,
            X509ChainStatusFlags.Revoked => ChainProblem.Revoked,
            X509ChainStatusFlags.RevocationStatusUnknown
            or X509ChainStatusFlags.OfflineRevocation => ChainProblem.RevocationUnknown,
            X509ChainStatusFlags.ExplicitDistrust => ChainProblem.Distrusted,
            X509ChainStatusFlags.HasWeakSignature => ChainProblem.SignatureNotStrong,
            _ => ChainProblem.Other,
        };
}
