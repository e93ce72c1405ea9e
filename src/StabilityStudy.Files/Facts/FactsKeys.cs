using StabilityStudy.Files.Columns;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Layouts;
using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Facts;

/// <summary>The keys at the top of study.toml.</summary>
internal static class FactsKeys
{
    internal const int LongestTitle = 120;
    internal const int LongestQuestion = 400;

    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<int> Format = FormatNumber.Declare(Table);
    public static readonly Key<string> Title = Table.Add("title", Required, TextUpTo(LongestTitle), "title of the study", "\"aPTT in whole blood\"");
    public static readonly Key<string> Facility = Table.Add("facility", Required, TextUpTo(LongestTitle), "the laboratory", "\"Invented laboratory\"");
    public static readonly Key<string> Question = Table.Add("question", Required, TextUpTo(LongestQuestion), "what was asked, in one sentence", "\"May whole blood wait eight hours?\"");
    public static readonly Key<bool> Invented = Table.Add("invented", Optional, Flag, "whether this is an invented example", "true");
    public static readonly Key<string?> TimeZone = Table.Add("time_zone", Depends, OptionalText with { Allowed = ZoneReader.Allowed }, "zone of times without an offset, for which it is required", "\"America/Chicago\"");
    public static readonly Key<string?> Funding = Table.Add("funding", Optional, OptionalText, "who paid for the study", "\"the laboratory\"");
    public static readonly Key<string?> Interests = Table.Add("interests", Optional, OptionalText, "interests of those who ran it, or that there are none", "\"none\"");
    public static readonly TableKey People = Table.AddTables("person", Required, PersonKeys.Table, "persons, a [[person]] each", "[[person]]");
    public static readonly TableKey Instruments = Table.AddTables("instrument", Optional, InstrumentKeys.Table, "instruments, an [[instrument]] each", "[[instrument]]");
    public static readonly TableKey Lots = Table.AddTables("lot", Optional, LotKeys.Table, "reagent lots, a [[lot]] each", "[[lot]]");
    public static readonly TableKey Clocks = Table.AddTable("clock", Optional, ClockKeys.Table, "whose clock each time column is", "{ tested_at = \"analyzer\" }");
    public static readonly TableKey ClockCorrections = Table.AddTables("clock_correction", Optional, ClockCorrectionKeys.Table, "that the clock of an analyzer was wrong in some runs, a [[clock_correction]] each; the files keep the recorded times, the corrected ones count, and the report tells it", "[[clock_correction]]");
    public static readonly TableKey CollectionTube = Table.AddTable("collection_tube", Optional, CollectionTubeKeys.Table, "the tube into which specimens were drawn", "{ name = \"2.7 mL, plastic\", citrate_percent = 3.2 }");
    public static readonly TableKey Spinning = Table.AddTable("spinning", Optional, SpinningKeys.Table, "how tubes were spun", "{ centrifuge = \"C-2\", relative_force = 1500, duration = \"15 min\", platelets = 6 }");
    public static readonly TableKey Temperatures = Table.AddTables("temperature", Optional, TemperatureKeys.Table, "lowest and highest temperature of a storage while tubes waited, a [[temperature]] each", "[[temperature]]");
    public static readonly TableKey Thawing = Table.AddTable("thawing", Optional, ThawingKeys.Table, "how frozen plasma was thawed", "{ celsius = [36.6, 37.3], duration = \"5 min\", device = \"water bath WB-1\" }");
    public static readonly TableKey Subjects = Table.AddTable("subjects", Optional, SubjectKeys.Table, "whose specimens they are", "{ source = \"patients of the hospital\", selection = \"in the order of arrival\", ethics = \"committee decision 2026-014\" }");
    public static readonly TableKey Files = Table.AddTable("files", Optional, FileNameKeys.Table, "names of the data files", "{ results = \"results.csv\" }");
    public static readonly TableKey Exclusions = Table.AddTables("exclusion", Optional, ExclusionKeys.Table, "pairs left out by a decision, an [[exclusion]] each", "[[exclusion]]");
    public static readonly TableKey Deviations = Table.AddTables("deviation", Optional, DeviationKeys.Table, "departures from the protocol, a [[deviation]] each", "[[deviation]]");
    public static readonly TableKey Reruns = Table.AddTables("rerun", Optional, RerunKeys.Table, "tests repeated for a reason of the protocol, a [[rerun]] each", "[[rerun]]");
    public static readonly TableKey NotDrawn = Table.AddTables("not_drawn", Optional, NotDrawnKeys.Table, "tubes stated at collection not to have been drawn, a [[not_drawn]] each", "[[not_drawn]]");
    public static readonly TableKey TranscriptionChecks = Table.AddTables("transcription_check", Optional, TranscriptionCheckKeys.Table, "comparisons of rows drawn at random with the instrument's printout, a [[transcription_check]] each; transcription prints the sheet", "[[transcription_check]]");
    public static readonly TableKey Answers = Table.AddTables("answer", Optional, AnswerKeys.Table, "answers to data queries, an [[answer]] each; check then counts the query and lists it no more, the report keeps it with the answer", "[[answer]]");
    public static readonly TableKey EndedEarly = Table.AddTable("ended_early", Optional, EndedEarlyKeys.Table, "that collection ended before the planned number was reached; what is concluded from fewer counts only when nobody had looked at changes before this was stated", "{ reason = \"study nurse left\", by = \"LS1\", on = \"2026-03-20\" }");
    public static readonly TableKey CodesDeclared = Table.AddTable("codes_declared", Optional, DeclaredCodesKeys.Table, "that codes which look like record or telephone numbers were made for this study and lead to nobody; without it such codes stop the study, and names and birth dates always do", "{ reason = \"labels printed for this study; no list links them\", by = \"LS1\", on = \"2026-03-02\" }");
    public static readonly TableKey Revision = Table.AddTable("revision", Optional, RevisionKeys.Table, "that the report replaces an earlier one of the study; not given for the first report", "{ number = 2, replaces = \"3f09c2d41b7a5e68\", reason = \"lot of the reagent corrected\" }");
    public static readonly TableKey Read = Table.AddTable("read", Optional, LayoutKeys.Table, "how the facility's own files are written, where they are not the usual ones", "{ results = { delimiter = \";\" } }");
    // csharpier-ignore-end
}

/// <summary>The keys of "clock": the time columns of the data files.</summary>
internal static class ClockKeys
{
    public static readonly KeyTable Table = new();

    public static readonly ImmutableArray<Key<string>> Columns =
    [
        Add(TubeColumns.CollectedAt, "label printer"),
        Add(TubeColumns.ReceivedAt, "laboratory system"),
        Add(TubeColumns.SpunAt, "wall clock"),
        Add(TubeColumns.SeparatedAt, "wall clock"),
        Add(TubeColumns.FrozenAt, "wall clock"),
        Add(TubeColumns.ThawedAt, "wall clock"),
        Add(ResultColumns.TestedAt, "analyzer"),
    ];

    private static Key<string> Add(Column column, string example) =>
        Table.Add(column.Name, Optional, Text, "of that column", $"\"{example}\"");
}

/// <summary>The keys of "files".</summary>
internal static class FileNameKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Specimens = Table.Add("specimens", Optional, PlainNames.Form.Or(Core.Study.StudyFileNames.Usual.Specimens), "a row a tube", "\"specimens.csv\"");
    public static readonly Key<string> Results = Table.Add("results", Optional, PlainNames.Form.Or(Core.Study.StudyFileNames.Usual.Results), "a row a result", "\"results.csv\"");
    public static readonly Key<string> Controls = Table.Add("controls", Optional, PlainNames.Form.Or(Core.Study.StudyFileNames.Usual.Controls), "a row a control result", "\"controls.csv\"");
    // csharpier-ignore-end
}
