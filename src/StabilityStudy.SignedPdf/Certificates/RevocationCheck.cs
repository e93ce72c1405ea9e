using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Asks the given lists whether certificates of a trusted chain were revoked. Where lists contradict each other, the worst holds.</summary>
/// <param name="Lists">Revocation lists and answers, of any issuers.</param>
/// <param name="Time">The time at which the certificates must have been valid.</param>
/// <param name="TimeIsProven">A trusted time stamp proves the time, so that a revocation after it does not count.</param>
/// <param name="Now">When is verified; null when not said.</param>
internal sealed record RevocationCheck(
    ImmutableArray<RevocationStatement> Lists,
    DateTimeOffset Time,
    bool TimeIsProven,
    DateTimeOffset? Now
)
{
    /// <summary>The time up to which a revocation counts, where it is proven, and that a list must be about.</summary>
    public required DateTimeOffset KnownAt { get; init; }

    /// <summary>Whether a list will do that was made before that time and was to be replaced after it.</summary>
    public bool TakesCurrent { get; init; }

    /// <summary>The outcome, the date of the first revocation found, and what is missing.</summary>
    /// <param name="chain">The chain, the trusted certificate last.</param>
    public (
        RevocationOutcome Outcome,
        DateTimeOffset? At,
        ImmutableArray<RevocationFault> Faults
    ) Of(IReadOnlyList<X509Certificate2> chain)
    {
        var faults = ImmutableArray.CreateBuilder<RevocationFault>();
        for (var i = 0; i < chain.Count; i++)
        {
            // The last one, which is trusted, may still have revoked itself.
            var issuer = chain[Math.Min(i + 1, chain.Count - 1)];
            var found = Lists
                .Select(list => (List: list, Problem: ProblemOf(list, chain[i], issuer)))
                .ToList();
            foreach (var (list, problem) in found)
            {
                if (
                    !IsOfNobody(problem)
                    && list.RevocationOf(chain[i]) is { } revoked
                    && !(TimeIsProven && revoked > KnownAt)
                )
                {
                    return (RevocationOutcome.Revoked, revoked, []);
                }
            }

            if (i + 1 < chain.Count)
            {
                faults.AddRange(Faults(found, CertificateFacts.Of(chain[i])));
            }
        }

        return (
            chain.Count == 1 ? RevocationOutcome.NotNeeded
            : faults.Count == 0 ? RevocationOutcome.NotRevoked
            : RevocationOutcome.NotChecked,
            null,
            faults.DrainToImmutable()
        );
    }

    private static IEnumerable<RevocationFault> Faults(
        List<(RevocationStatement List, RevocationListProblem? Problem)> found,
        CertificateFacts certificate
    )
    {
        if (found.Count == 0)
        {
            return [new(RevocationListProblem.Missing, certificate, null)];
        }

        // A list in the name of the issuer that is not right is told beside one that is.
        var isShown = found.Exists(static item => item.Problem is null);
        return found
            .Where(item =>
                item.Problem
                    is RevocationListProblem.NotSignedByIssuer
                        or RevocationListProblem.SignatureNotStrong
                || (!isShown && item.Problem is not null)
            )
            .Select(item => new RevocationFault(item.Problem!.Value, certificate, item.List));
    }

    private RevocationListProblem? ProblemOf(
        RevocationStatement list,
        X509Certificate2 certificate,
        X509Certificate2 issuer
    ) =>
        list.ProblemAgainst(certificate, issuer)
        ?? (
            list.ThisUpdate < KnownAt && !(TakesCurrent && list.NextUpdate >= KnownAt)
                ? RevocationListProblem.MadeBefore
            : list.ThisUpdate > Now ? RevocationListProblem.MadeInFuture
            : list.ThisUpdate > CertificateFacts.Of(certificate).NotAfter
                ? RevocationListProblem.MadeAfterExpiry
            : !TimeIsProven && Now is { } now && !(list.NextUpdate >= now)
                ? RevocationListProblem.OutOfDate
            : null
        );

    /// <summary>Nothing in such a list can be relied on, not even that a certificate was revoked.</summary>
    private static bool IsOfNobody(RevocationListProblem? problem) =>
        problem
            is RevocationListProblem.OfAnotherIssuer
                or RevocationListProblem.NotSignedByIssuer
                or RevocationListProblem.SignatureNotStrong;
}
