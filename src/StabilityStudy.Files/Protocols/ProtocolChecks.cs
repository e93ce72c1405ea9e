using StabilityStudy.Files.Queries;

namespace StabilityStudy.Files.Protocols;

/// <summary>Checks across the keys of a protocol: that it hangs together, can be carried out and can be judged.</summary>
internal static class ProtocolChecks
{
    private const int LongestCode = 60;

    public static void Check(ProtocolDraft draft)
    {
        CheckCode(draft);
        draft.Signatories.RequireUnique("role", signatory => signatory.Role);
        draft.Storages.RequireUnique("id", storage => storage.Id);
        draft.Groups.RequireUnique("id", group => group.Id);
        draft.Analytes.RequireUnique("id", analyte => analyte.Id);
        draft.Limits.RequireUnique("id", limit => limit.Id);
        draft.Criteria.RequireUnique("id", criterion => criterion?.Id ?? "");
        PlanChecks.Check(draft);
        ConductReader.Check(draft);
        AnalyteReferences.Check(draft);
        CriterionReferences.Check(draft);
        CriterionFit.Check(draft);
        CriterionCoverage.Check(draft);
        CriterionReach.Check(draft);
        PlanCautions.Check(draft);
        CriterionCautions.Check(draft);
        LimitCautions.Check(draft);
        AnalyteCautions.Check(draft);
        EligibilityCautions.Check(draft);
        SourceCautions.Check(draft);
    }

    private static void CheckCode(ProtocolDraft draft)
    {
        if (!draft.Root.IsSound("code"))
        {
            return;
        }

        var unfit = draft
            .Code.Where(c => !char.IsAsciiLetterOrDigit(c) && c is not ('-' or '_' or '.'))
            .Distinct()
            .ToArray();
        if (unfit.Length > 0 || draft.Code.StartsWith('.') || draft.Code.Length > LongestCode)
        {
            draft.Root.Fault(
                "code",
                ProtocolQueries.UnfitCode,
                draft.Code,
                unfit.Length > 0
                    ? $"The study code names files, and \"{new string(unfit)}\" is unfit for that."
                    : FormattableString.Invariant(
                        $"The study code names files: it must not begin with a point or have more than {LongestCode} characters."
                    ),
                "Use letters, digits, hyphen, underscore and point only."
            );
        }
    }
}
