using StabilityStudy.Core.Study;
using static StabilityStudy.Files.Json.Forms.ProtocolForms;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>What happened.</summary>
internal static class FactsForms
{
    public static readonly ObjectForm<Person> PersonForm = new("person")
    {
        { "code", v => v.Code, Form.Text },
        { "name", v => v.Name, Form.Text },
        { "role", v => v.Role, Form.Text },
    };

    public static readonly ObjectForm<Instrument> InstrumentForm = new("instrument")
    {
        { "id", v => v.Id, Form.Text },
        { "name", v => v.Name, Form.Text },
        { "site", v => v.Site, Form.Text.OrNull() },
    };

    public static readonly ObjectForm<Lot> LotForm = new("lot")
    {
        { "id", v => v.Id, Form.Text },
        { "kind", v => v.Kind, Form.Text },
        { "analyte", v => v.Analyte, Form.Text },
        { "expires", v => v.Expires, Form.Day.OrNull() },
        { "isi", v => v.Isi, Form.Exact.OrNull() },
        { "meanNormalTime", v => v.MeanNormalTime, Form.Exact.OrNull() },
    };

    public static readonly ObjectForm<Clock> ClockForm = new("clock")
    {
        { "column", v => v.Column, Form.Text },
        { "description", v => v.Description, Form.Text },
    };

    public static readonly ObjectForm<ClockCorrection> ClockCorrectionForm = new("clockCorrection")
    {
        { "runs", v => v.Runs, Form.List(Form.Text) },
        { "days", v => v.Days, Form.List(Form.Day) },
        { "instrument", v => v.Instrument, Form.Text.OrNull() },
        { "minutes", v => v.Minutes, Form.Count },
        { "reason", v => v.Reason, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
        { "line", v => v.Line, Form.Count },
    };

    public static readonly ObjectForm<StudyFileNames> StudyFileNamesForm = new("studyFileNames")
    {
        { "specimens", v => v.Specimens, Form.Text },
        { "results", v => v.Results, Form.Text },
        { "controls", v => v.Controls, Form.Text },
    };

    public static readonly ObjectForm<Exclusion> ExclusionForm = new("exclusion")
    {
        { "specimen", v => v.Specimen, Form.Text },
        { "analyte", v => v.Analyte, Form.Text.OrNull() },
        { "timePoint", v => v.TimePoint, Form.TimePoint.OrNull() },
        { "reason", v => v.Reason, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
        { "line", v => v.Line, Form.Count },
        { "time", v => v.Time, Form.TimeOfDay.OrNull() },
    };

    public static readonly ObjectForm<Deviation> DeviationForm = new("deviation")
    {
        { "text", v => v.Text, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
    };

    public static readonly ObjectForm<Rerun> RerunForm = new("rerun")
    {
        { "specimen", v => v.Specimen, Form.Text },
        { "analyte", v => v.Analyte, Form.Text },
        { "timePoint", v => v.TimePoint, Form.TimePoint.OrNull() },
        { "reason", v => v.Reason, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
        { "line", v => v.Line, Form.Count },
    };

    public static readonly ObjectForm<NotDrawn> NotDrawnForm = new("notDrawn")
    {
        { "specimen", v => v.Specimen, Form.Text },
        { "timePoint", v => v.TimePoint, Form.TimePoint },
        { "storage", v => v.Storage, Form.Text.OrNull() },
        { "reason", v => v.Reason, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
        { "line", v => v.Line, Form.Count },
    };

    public static readonly ObjectForm<TranscriptionCheck> TranscriptionCheckForm = new(
        "transcriptionCheck"
    )
    {
        { "seed", v => v.Seed, Form.Count },
        { "rows", v => v.Rows, Form.Count },
        { "differences", v => v.Differences, Form.Count },
        { "outcome", v => v.Outcome, Form.Text.OrNull() },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
    };

    public static readonly ObjectForm<QueryAnswer> QueryAnswerForm = new("queryAnswer")
    {
        { "query", v => v.Query, Form.Text },
        { "text", v => v.Text, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
    };

    public static readonly ObjectForm<EndedEarly> EndedEarlyForm = new("endedEarly")
    {
        { "reason", v => v.Reason, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
        { "line", v => v.Line, Form.Count },
    };

    public static readonly ObjectForm<DeclaredCodes> DeclaredCodesForm = new("declaredCodes")
    {
        { "reason", v => v.Reason, Form.Text },
        { "by", v => v.By, Form.Text },
        { "on", v => v.On, Form.Day },
        { "line", v => v.Line, Form.Count },
    };

    public static readonly ObjectForm<ReportRevision> RevisionForm = new("reportRevision")
    {
        { "number", v => v.Number, Form.Count },
        { "replaces", v => v.Replaces, Form.Text },
        { "reason", v => v.Reason, Form.Text },
    };

    public static readonly ObjectForm<StudyFacts> StudyFactsForm = new("studyFacts")
    {
        { "title", v => v.Title, Form.Text },
        { "facility", v => v.Facility, Form.Text },
        { "question", v => v.Question, Form.Text },
        { "invented", v => v.Invented, Form.Truth },
        { "timeZone", v => v.TimeZone, Form.Text.OrNull() },
        { "people", v => v.People, Form.Keyed(PersonForm, "code") },
        { "instruments", v => v.Instruments, Form.Keyed(InstrumentForm, "id") },
        { "lots", v => v.Lots, Form.Keyed(LotForm, "id") },
        { "clocks", v => v.Clocks, Form.List(ClockForm) },
        { "files", v => v.Files, StudyFileNamesForm },
        { "exclusions", v => v.Exclusions, Form.List(ExclusionForm) },
        { "deviations", v => v.Deviations, Form.List(DeviationForm) },
        { "reruns", v => v.Reruns, Form.List(RerunForm) },
        { "notDrawn", v => v.NotDrawn, Form.List(NotDrawnForm) },
        { "transcriptionChecks", v => v.TranscriptionChecks, Form.List(TranscriptionCheckForm) },
        { "answers", v => v.Answers, Form.List(QueryAnswerForm) },
        { "endedEarly", v => v.EndedEarly, EndedEarlyForm.OrNull() },
        { "collectionTube", v => v.CollectionTube, HandlingForms.TubeForm.OrLeftOut() },
        { "spinning", v => v.Spinning, HandlingForms.SpinningForm.OrLeftOut() },
        {
            "temperatures",
            v => v.Temperatures,
            Form.List(HandlingForms.TemperatureForm).OrLeftOut()
        },
        { "thawing", v => v.Thawing, HandlingForms.ThawingForm.OrLeftOut() },
        { "specimenSource", v => v.SpecimenSource, HandlingForms.SourceForm.OrLeftOut() },
        { "funding", v => v.Funding, Form.Text.OrLeftOut() },
        { "interests", v => v.Interests, Form.Text.OrLeftOut() },
        { "codesDeclared", v => v.CodesDeclared, DeclaredCodesForm.OrLeftOut() },
        { "revision", v => v.Revision, RevisionForm.OrLeftOut() },
        { "clockCorrections", v => v.ClockCorrections, Form.List(ClockCorrectionForm).OrLeftOut() },
        { "sentTimes", v => v.SentTimes, Form.List(OwnFileForms.SentTimeForm).OrLeftOut() },
        { "ownFiles", v => v.OwnFiles, Form.Keyed(OwnFileForms.OwnFileForm, "name").OrLeftOut() },
    };
}
