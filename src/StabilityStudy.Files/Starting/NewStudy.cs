namespace StabilityStudy.Files.Starting;

/// <summary>What is known of a study before its first tube, and goes into a new study.toml.</summary>
/// <param name="Protocol">Name of the ready protocol that it begins with.</param>
/// <param name="Title">Title of the study.</param>
/// <param name="Facility">The laboratory.</param>
/// <param name="Question">What is asked.</param>
/// <param name="TimeZone">IANA zone of times without an offset; null when every time will have one.</param>
/// <param name="People">Who works on it.</param>
/// <param name="Instruments">With what; may be named later.</param>
/// <param name="Lots">With which lots; may be named later.</param>
/// <param name="Invented">Whether its data will be invented.</param>
public sealed record NewStudy(
    string Protocol,
    string Title,
    string Facility,
    string Question,
    string? TimeZone,
    ImmutableArray<Core.Study.Person> People,
    ImmutableArray<Core.Study.Instrument> Instruments,
    ImmutableArray<Core.Study.Lot> Lots,
    bool Invented
)
{
    /// <summary>Most characters of title and facility.</summary>
    public const int LongestTitle = Facts.FactsKeys.LongestTitle;

    /// <summary>Most characters of the question.</summary>
    public const int LongestQuestion = Facts.FactsKeys.LongestQuestion;
}
