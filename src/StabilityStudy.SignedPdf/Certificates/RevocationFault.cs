namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>One reason why nothing shows that a certificate was not revoked.</summary>
/// <param name="Problem">What is wrong.</param>
/// <param name="Certificate">The certificate in question.</param>
/// <param name="List">The list or answer in question; null when there is none.</param>
public sealed record RevocationFault(
    RevocationListProblem Problem,
    CertificateFacts Certificate,
    RevocationStatement? List
);
