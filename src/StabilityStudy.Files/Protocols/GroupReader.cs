namespace StabilityStudy.Files.Protocols;

/// <summary>Reads who and what is studied: patient groups, and which specimens may be used.</summary>
internal static class GroupReader
{
    public static PatientGroup Read(TomlTable table) =>
        new(
            Id: table.Read(GroupKeys.Id),
            Name: table.Read(GroupKeys.Name),
            Specimens: table.Read(GroupKeys.Specimens),
            BaselineSpunWithin: table.Read(GroupKeys.BaselineSpunWithin)
        )
        {
            WhySoMany = table.Read(GroupKeys.Why),
            Anticoagulant = table.Read(GroupKeys.Anticoagulant),
        };

    public static Eligibility ReadEligibility(TomlTable table) =>
        new(
            FillPercentMinimum: table.Read(EligibilityKeys.FillPercentMinimum),
            HematocritPercentMaximum: table.Read(EligibilityKeys.HematocritPercentMaximum),
            RejectClot: table.Read(EligibilityKeys.Clot),
            Source: table.Read(EligibilityKeys.Source)
        );
}
