using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Facts;

/// <summary>The keys of a person.</summary>
internal static class PersonKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Code = Table.Add("code", Required, Text, "code used in the files", "\"LS1\"");
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "name in the report", "\"Lab Scientist One\"");
    public static readonly Key<string> Role = Table.Add("role", Required, Text, "role", "\"lab scientist\"");
    // csharpier-ignore-end
}

/// <summary>The keys of an instrument.</summary>
internal static class InstrumentKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in results.csv", "\"AN1\"");
    public static readonly Key<string> Name = Table.Add("name", Required, Text, "name in the report", "\"Analyzer one\"");
    public static readonly Key<string?> Site = Table.Add("site", Optional, OptionalText, "site at which it stands", "\"North\"");
    // csharpier-ignore-end
}

/// <summary>The keys of a lot.</summary>
internal static class LotKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Id = Table.Add("id", Required, Text, "code used in results.csv", "\"R-1\"");
    public static readonly Key<string> Kind = Table.Add("kind", Required, Text, "reagent, calibrator …", "\"reagent\"");
    public static readonly Key<string> Analyte = Table.Add("analyte", Required, Text, "analyte it serves", "\"aPTT\"");
    public static readonly Key<DateOnly?> Expires = Table.Add("expires", Optional, Date.OrNone(), "last day of use", "\"2027-01-31\"");
    public static readonly Key<decimal?> Isi = Table.Add("isi", Optional, Number(NumberRange.Isi).OrNone(), "international sensitivity index of a thromboplastin", "1.05");
    public static readonly Key<decimal?> MeanNormalTime = Table.Add("mean_normal_time", Optional, Number(NumberRange.AboveZero).OrNone(), "mean normal prothrombin time, s", "11.8");
    // csharpier-ignore-end
}
