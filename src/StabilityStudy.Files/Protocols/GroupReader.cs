using StabilityStudy.Core.Protocol;
using StabilityStudy.Files.Toml;
using StabilityStudy.Files.Words;

namespace StabilityStudy.Files.Protocols;

/// <summary>Reads who and what is studied: patient groups, and which specimens may be used.</summary>
internal static class GroupReader
{
    private const int MostSpecimens = 100_000;

    public static PatientGroup Read(TomlTable table) =>
        new(
            Id: table.RequireText("id"),
            Name: table.RequireText("name"),
            Specimens: table.RequireWhole("specimens", 1, MostSpecimens),
            BaselineSpunWithin: table.OptionalDuration("baseline_spun_within")
        );

    public static Eligibility ReadEligibility(TomlTable table) =>
        new(
            FillPercentMinimum: table.OptionalDecimal("fill_percent_min", NumberRange.Percent),
            HematocritPercentMaximum: table.OptionalDecimal(
                "hematocrit_percent_max",
                NumberRange.Percent
            ),
            RejectClot: table.RequireChoice("clot", FileWords.ClotRules),
            Source: table.RequireText("source")
        );
}
