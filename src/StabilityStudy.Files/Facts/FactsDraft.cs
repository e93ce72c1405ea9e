using StabilityStudy.Core.Study;
using StabilityStudy.Files.Layouts;
using StabilityStudy.Files.Protocols;

namespace StabilityStudy.Files.Facts;

/// <summary>The study facts as far as they could be read, with the places for the checks.</summary>
internal sealed record FactsDraft(
    TomlTable Root,
    string Title,
    string Facility,
    string Question,
    bool Invented,
    StudyZone? TimeZone,
    Parts<Person> People,
    Parts<Instrument> Instruments,
    Parts<Lot> Lots,
    ImmutableArray<Clock> Clocks,
    Parts<ClockCorrection> ClockCorrections,
    StudyFileNames FileNames,
    Parts<Exclusion> Exclusions,
    Parts<Deviation> Deviations,
    Parts<Rerun> Reruns,
    Parts<NotDrawn> NotDrawn,
    Parts<TranscriptionCheck> TranscriptionChecks,
    Parts<QueryAnswer> Answers,
    HandlingFacts Handling,
    EndedEarly? EndedEarly,
    DeclaredCodes? CodesDeclared,
    ReportRevision? Revision
)
{
    /// <summary>The facts; sound only when no query stops.</summary>
    public StudyFacts ToFacts() =>
        new(
            Title,
            Facility,
            Question,
            Invented,
            TimeZone?.Name,
            People.Values,
            Instruments.Values,
            Lots.Values,
            Clocks,
            FileNames,
            Exclusions.Values,
            Deviations.Values
        )
        {
            ClockCorrections = ClockCorrections.Values,
            Reruns = Reruns.Values,
            NotDrawn = NotDrawn.Values,
            TranscriptionChecks = TranscriptionChecks.Values,
            Answers = Answers.Values,
            CollectionTube = Handling.Tube?.Value,
            Spinning = Handling.Spinning?.Value,
            Temperatures = Handling.Temperatures.Values,
            Thawing = Handling.Thawing?.Value,
            SpecimenSource = Handling.Subjects?.Value,
            Funding = Handling.Funding,
            Interests = Handling.Interests,
            EndedEarly = EndedEarly,
            CodesDeclared = CodesDeclared,
            Revision = Revision,
        };
}
