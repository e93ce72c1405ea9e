namespace StabilityStudy.Files.Protocols;

/// <summary>Checks across the keys of a protocol: that it hangs together, can be carried out and can be judged.</summary>
internal static class ProtocolChecks
{
    public static void Check(ProtocolDraft draft)
    {
        draft.Signatories.RequireUnique(SignatoryKeys.Role, signatory => signatory.Role);
        draft.Storages.RequireUnique(StorageKeys.Id, storage => storage.Id);
        draft.Groups.RequireUnique(GroupKeys.Id, group => group.Id);
        draft.Analytes.RequireUnique(AnalyteKeys.Id, analyte => analyte.Id);
        draft.Limits.RequireUnique(LimitKeys.Id, limit => limit.Id);
        draft.Criteria.RequireUnique(CriterionKeys.Id, criterion => criterion?.Id ?? "");
        PlanChecks.Check(draft);
        FirstTimePointCheck.Check(draft);
        ConductReader.Check(draft);
        ConductReader.CheckOrigin(draft);
        ConductReader.CheckDays(draft);
        AnalyteReferences.Check(draft);
        CriterionReferences.Check(draft);
        CriterionFit.Check(draft);
        CriterionCoverage.Check(draft);
        LevelsNeeded.Check(draft);
        CriterionReach.Check(draft);
        PlanCautions.Check(draft);
        CriterionCautions.Check(draft);
        LimitCautions.Check(draft);
        AnalyteCautions.Check(draft);
        EligibilityCautions.Check(draft);
        HandlingCautions.Check(draft);
        SourceCautions.Check(draft);
        LoincChecks.Check(draft);
    }
}
