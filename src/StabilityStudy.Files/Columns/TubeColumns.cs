using StabilityStudy.Files.Csv;
using static StabilityStudy.Files.Csv.ColumnForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Columns;

/// <summary>The columns of specimens.csv: a row a tube.</summary>
internal static class TubeColumns
{
    internal const string TimeExample = "2026-03-02T07:42-05:00";

    public static readonly ColumnTable<TubeRow> Table = new("specimens");

    // csharpier-ignore-start
    public static readonly Column<string> Specimen = Table.Add("specimen", Required, StudyCode, row => row.Specimen, "study code of the specimen, never a patient's number", "N-017");
    public static readonly Column<string> Tube = Table.Add("tube", Required, StudyCode, row => row.Tube, "code of the tube, unique within the specimen", "A");
    public static readonly Column<string> Subject = Table.Add("subject", Required, StudyCode, row => row.Subject, "study code of the person", "S017");
    public static readonly Column<string> Group = Table.Add("group", Required, Known("a group of the protocol", known => known.Groups), row => row.Group, "the person's patient group", "none");
    public static readonly Column<string> Storage = Table.Add("storage", Required, Known("a storage of the protocol", known => known.Storages), row => row.Storage, "in what the tube waited", "wb-rt");
    public static readonly Column<int?> DrawPosition = Table.Add("draw_position", Optional, Whole(NumberRange.DrawPosition), row => row.DrawPosition, "place of the tube in the draw, 1 first", "2");
    public static readonly Column<DateTimeOffset> CollectedAt = Table.Add("collected_at", Required, Time, row => row.CollectedAt, "when it was collected", TimeExample);
    public static readonly Column<DateTimeOffset?> ReceivedAt = Table.Add("received_at", Optional, OptionalTime, row => row.ReceivedAt, "when it reached the laboratory", TimeExample);
    public static readonly Column<DateTimeOffset?> SpunAt = Table.Add("spun_at", Depends, OptionalTime, row => row.SpunAt, "when it was spun; without it the state in which a delayed tube waited is not known, and its result is left out", TimeExample);
    public static readonly Column<DateTimeOffset?> SeparatedAt = Table.Add("separated_at", Depends, OptionalTime, row => row.SeparatedAt, "when the plasma was taken off the cells; needed for separated plasma", TimeExample);
    public static readonly Column<DateTimeOffset?> FrozenAt = Table.Add("frozen_at", Depends, OptionalTime, row => row.FrozenAt, "when the plasma was frozen; needed for frozen storage", TimeExample);
    public static readonly Column<DateTimeOffset?> ThawedAt = Table.Add("thawed_at", Depends, OptionalTime, row => row.ThawedAt, "when it was thawed; needed for frozen storage", TimeExample);
    public static readonly Column<decimal?> FillPercent = Table.Add("fill_percent", Optional, Number(NumberRange.FillPercent), row => row.FillPercent, "fill, percent of nominal; needed where the protocol asks for a least fill", "96");
    public static readonly Column<int?> Inversions = Table.Add("inversions", Optional, Whole(NumberRange.Inversions), row => row.Inversions, "how often the tube was inverted", "4");
    public static readonly Column<decimal?> HematocritPercent = Table.Add("hematocrit_percent", Optional, Number(NumberRange.HematocritPercent), row => row.HematocritPercent, "hematocrit, percent; once a specimen is enough", "41");
    public static readonly Column<Hemolysis> Hemolysis = Table.Add("hemolysis", Optional, Word(FileWords.HemolysisGrades), row => row.Hemolysis, "grade of hemolysis", "none");
    public static readonly Column<ClotCheck> Clot = Table.Add("clot", Optional, Word(FileWords.ClotChecks), row => row.Clot, "whether there was a clot; empty is not the same as no", "no");
    public static readonly Column<string> Device = Table.Add("device", Optional, FreeText, row => row.Device, "how it was drawn; a winged set has the word winged or butterfly in its name", "straight needle");
    public static readonly Column<Origin> Origin = Table.Add("origin", Optional, Word(FileWords.Origins), row => row.Origin, "where the specimen comes from", "native");
    public static readonly Column<DiscardTube> DiscardTube = Table.AddLater("discard_tube", Word(FileWords.DiscardTubes), row => row.DiscardTube, "discard tube that was filled first; a device called a winged set needs one", "citrate");
    public static readonly Column<DrawnBefore> DrawnAfter = Table.AddLater("drawn_after", Word(FileWords.DrawnBefore), row => row.DrawnAfter, "what was drawn before in the same puncture, beside a discard tube", "nothing");
    public static readonly Column<TransportState> Transport = Table.AddLater("transport", Word(FileWords.Transports), row => row.Transport, "how the tube came to the laboratory", "room temperature");
    public static readonly Column<SpecimenMaterial> Material = Table.AddLater("material", Word(FileWords.Materials), row => row.Material, "what is in the tube: citrated blood or plasma; others do not count", "citrate");
    // csharpier-ignore-end
}
