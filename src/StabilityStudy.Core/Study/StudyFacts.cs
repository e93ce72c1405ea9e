namespace StabilityStudy.Core.Study;

/// <summary>What happened in this study and with what: the content of study.toml.</summary>
/// <param name="Title">Title of the study.</param>
/// <param name="Facility">The laboratory.</param>
/// <param name="Question">What was asked, in one sentence.</param>
/// <param name="Invented">Whether this is an invented example; the report then says so on every page.</param>
/// <param name="TimeZone">IANA zone for times written without an offset; null when every time has one.</param>
/// <param name="People">Persons named in the files.</param>
/// <param name="Instruments">Instruments named in the files.</param>
/// <param name="Lots">Reagent lots named in the files.</param>
/// <param name="Clocks">Whose clock each time column is.</param>
/// <param name="Files">Where the data are.</param>
/// <param name="Exclusions">Documented exclusions.</param>
/// <param name="Deviations">Departures from the protocol.</param>
public sealed record StudyFacts(
    string Title,
    string Facility,
    string Question,
    bool Invented,
    string? TimeZone,
    ImmutableArray<Person> People,
    ImmutableArray<Instrument> Instruments,
    ImmutableArray<Lot> Lots,
    ImmutableArray<Clock> Clocks,
    StudyFileNames Files,
    ImmutableArray<Exclusion> Exclusions,
    ImmutableArray<Deviation> Deviations
)
{
    /// <summary>Documented reruns: tests repeated for a reason that the protocol names.</summary>
    public ImmutableArray<Rerun> Reruns { get; init; } = [];

    /// <summary>Tubes stated at collection not to have been drawn.</summary>
    public ImmutableArray<NotDrawn> NotDrawn { get; init; } = [];

    /// <summary>Comparisons of rows with the instrument's printout.</summary>
    public ImmutableArray<TranscriptionCheck> TranscriptionChecks { get; init; } = [];

    /// <summary>Answers to data queries.</summary>
    public ImmutableArray<QueryAnswer> Answers { get; init; } = [];

    /// <summary>The tube into which specimens were drawn; null when not stated.</summary>
    public CollectionTube? CollectionTube { get; init; }

    /// <summary>How tubes were spun; null when not stated.</summary>
    public Spinning? Spinning { get; init; }

    /// <summary>The temperatures at which tubes waited.</summary>
    public ImmutableArray<StorageTemperature> Temperatures { get; init; } = [];

    /// <summary>How frozen plasma was thawed; null when not stated.</summary>
    public Thawing? Thawing { get; init; }

    /// <summary>Whose specimens they are; null when not stated.</summary>
    public SpecimenSource? SpecimenSource { get; init; }

    /// <summary>Who paid for the study; null when not stated.</summary>
    public string? Funding { get; init; }

    /// <summary>Interests of those who ran it; null when not stated.</summary>
    public string? Interests { get; init; }

    /// <summary>That collection ended before the planned number was reached; null when it did not, or is going on.</summary>
    public EndedEarly? EndedEarly { get; init; }

    /// <summary>That codes which look like numbers of records or telephones lead to nobody; null when nobody declared it.</summary>
    public DeclaredCodes? CodesDeclared { get; init; }

    /// <summary>That the report replaces an earlier one; null when it does not.</summary>
    public ReportRevision? Revision { get; init; }

    /// <summary>Corrections of wrong clocks.</summary>
    public ImmutableArray<ClockCorrection> ClockCorrections { get; init; } = [];

    /// <summary>From which fields of messages times come, in the order of a tube's way.</summary>
    public ImmutableArray<SentTime> SentTimes { get; init; } = [];

    /// <summary>The laboratory's own files that are not written in the usual way, in the order of their kinds.</summary>
    public ImmutableArray<OwnFile> OwnFiles { get; init; } = [];
}

/// <summary>The end of a collection that did not reach the planned number.</summary>
/// <param name="Reason">Why.</param>
/// <param name="By">Code of the person who decided.</param>
/// <param name="On">Day of the decision: the last on which a specimen may have been collected.</param>
/// <param name="Line">Line in study.toml.</param>
public sealed record EndedEarly(string Reason, string By, DateOnly On, int Line);

/// <summary>A declaration that codes which look like numbers of records or telephones were made for the study and lead to nobody.</summary>
/// <param name="Reason">Where they come from.</param>
/// <param name="By">Code of the person who declares it.</param>
/// <param name="On">Day of the declaration.</param>
/// <param name="Line">Line in study.toml.</param>
public sealed record DeclaredCodes(string Reason, string By, DateOnly On, int Line);

/// <summary>A test repeated for a reason that the protocol names.</summary>
/// <param name="Specimen">Code of the draw.</param>
/// <param name="Analyte">Analyte that was tested again.</param>
/// <param name="TimePoint">Planned delay; null for the baseline.</param>
/// <param name="Reason">One of the protocol's reasons.</param>
/// <param name="By">Code of the person who decided.</param>
/// <param name="On">Day of the decision.</param>
/// <param name="Line">Line in study.toml.</param>
public sealed record Rerun(
    string Specimen,
    string Analyte,
    Protocol.TimePoint? TimePoint,
    string Reason,
    string By,
    DateOnly On,
    int Line
);

/// <summary>A person named in the files.</summary>
/// <param name="Code">Code by which rows and decisions name the person.</param>
/// <param name="Name">Name; in examples an invented one.</param>
/// <param name="Role">What the person does in the study.</param>
public sealed record Person(string Code, string Name, string Role);

/// <summary>An instrument named in the files.</summary>
/// <param name="Id">Code by which rows name it.</param>
/// <param name="Name">What it is.</param>
public sealed record Instrument(string Id, string Name)
{
    /// <summary>The site at which it stands; null when not stated.</summary>
    public string? Site { get; init; }
}

/// <summary>A lot of reagent or calibrator.</summary>
/// <param name="Id">Key used in results.csv.</param>
/// <param name="Kind">Reagent, calibrator …</param>
/// <param name="Analyte">Analyte it serves.</param>
/// <param name="Expires">Last day of use; null when not stated.</param>
public sealed record Lot(string Id, string Kind, string Analyte, DateOnly? Expires)
{
    /// <summary>International sensitivity index of a thromboplastin; null when not stated.</summary>
    public decimal? Isi { get; init; }

    /// <summary>Mean normal prothrombin time with this lot, s; null when not stated.</summary>
    public decimal? MeanNormalTime { get; init; }
}

/// <summary>Whose clock a time column is.</summary>
/// <param name="Column">Name of the column.</param>
/// <param name="Description">Which clock its times were read from, as the laboratory states it.</param>
public sealed record Clock(string Column, string Description);

/// <summary>A pair left out by a person's documented decision.</summary>
/// <param name="Specimen">Specimen code.</param>
/// <param name="Analyte">Analyte; null means all.</param>
/// <param name="TimePoint">Time point; null means all.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Code of the person.</param>
/// <param name="On">Day of the decision.</param>
/// <param name="Line">Line in study.toml.</param>
public sealed record Exclusion(
    string Specimen,
    string? Analyte,
    Protocol.TimePoint? TimePoint,
    string Reason,
    string By,
    DateOnly On,
    int Line
)
{
    /// <summary>Time of the decision on that day, by the clock at the place of collection; null when not stated.</summary>
    public TimeOnly? Time { get; init; }

    /// <summary>Whether it was decided when a result of that time could be known. Without a time of day the decision may have been the last thing on its day.</summary>
    internal bool IsAfter(DateTimeOffset testedAt) =>
        On.ToDateTime(Time ?? TimeOnly.MaxValue) >= testedAt.DateTime;
}

/// <summary>A tube stated at collection not to have been drawn: its time point can have no result.</summary>
/// <param name="Specimen">Specimen code.</param>
/// <param name="TimePoint">Planned delay of the tube.</param>
/// <param name="Storage">The storage in which it would have waited; null means every storage of the specimen.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Code of the person who said so.</param>
/// <param name="On">Day on which it was stated.</param>
/// <param name="Line">Line in study.toml.</param>
public sealed record NotDrawn(
    string Specimen,
    Protocol.TimePoint TimePoint,
    string? Storage,
    string Reason,
    string By,
    DateOnly On,
    int Line
);

/// <summary>A departure from the protocol.</summary>
/// <param name="Text">What departed from the protocol, and what was done about it.</param>
/// <param name="By">Code of the person who states it.</param>
/// <param name="On">Day of the statement.</param>
public sealed record Deviation(string Text, string By, DateOnly On);

/// <summary>Rows drawn at random and compared with the instrument's printout.</summary>
/// <param name="Seed">Seed by which they were drawn.</param>
/// <param name="Rows">How many were compared.</param>
/// <param name="Differences">How many of them differed.</param>
/// <param name="Outcome">What became of the differences; null where there was none.</param>
/// <param name="By">Code of the person.</param>
/// <param name="On">Day of the comparison.</param>
public sealed record TranscriptionCheck(
    int Seed,
    int Rows,
    int Differences,
    string? Outcome,
    string By,
    DateOnly On
);

/// <summary>A person's answer to a data query.</summary>
/// <param name="Query">Reference of the query.</param>
/// <param name="Text">The answer.</param>
/// <param name="By">Code of the person.</param>
/// <param name="On">Day of the answer.</param>
public sealed record QueryAnswer(string Query, string Text, string By, DateOnly On);
