namespace StabilityStudy.Reporting.Proving;

/// <summary>What the program found where the answers are known: published data, signed reports of earlier releases, and a report drawn anew.</summary>
/// <param name="Parts">The parts in the order in which they are told.</param>
public sealed record ProgramProof(ImmutableArray<ProofPart> Parts)
{
    /// <summary>All figures.</summary>
    public ImmutableArray<ProofFigure> Figures => [.. Parts.SelectMany(part => part.Figures)];

    /// <summary>Whether nothing differs; what could not be checked on this computer is no difference.</summary>
    public bool Agrees => Figures.All(figure => figure.Agreement != Agreement.Differs);
}

/// <summary>Cases of one kind.</summary>
/// <param name="Title">What they are.</param>
/// <param name="Explanation">What they show.</param>
/// <param name="Cases">The cases.</param>
public sealed record ProofPart(string Title, string Explanation, ImmutableArray<ProofCase> Cases)
{
    /// <summary>All figures of the part.</summary>
    public ImmutableArray<ProofFigure> Figures => [.. Cases.SelectMany(item => item.Figures)];
}

/// <summary>Figures from one source.</summary>
/// <param name="Title">What they are about.</param>
/// <param name="Source">Where the data and the expected figures are from.</param>
/// <param name="Reason">Why the figures may be as far apart as they may.</param>
/// <param name="Figures">The figures.</param>
public sealed record ProofCase(
    string Title,
    string Source,
    string Reason,
    ImmutableArray<ProofFigure> Figures
);

/// <summary>One thing whose answer is known.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Expected">The answer, with the digits of its source.</param>
/// <param name="Found">The answer of the program, with all digits.</param>
/// <param name="Tolerance">How far apart they may be, in words.</param>
/// <param name="Agreement">Whether they agree.</param>
public sealed record ProofFigure(
    string Name,
    string Expected,
    string Found,
    string Tolerance,
    Agreement Agreement
)
{
    /// <summary>Two texts that must be equal.</summary>
    public static ProofFigure Equal(string name, string expected, string found) =>
        new(
            name,
            expected,
            found,
            "equal",
            expected == found ? Agreement.Agrees : Agreement.Differs
        );
}

/// <summary>Whether what was found is what was expected. The zero member is the cautious one.</summary>
public enum Agreement
{
    /// <summary>It is not.</summary>
    Differs,

    /// <summary>It could not be checked on this computer.</summary>
    NotChecked,

    /// <summary>It is, within the tolerance.</summary>
    Agrees,
}

/// <summary>Where, when and by whom a proof was run.</summary>
/// <param name="Program">Program, version, decision rules and commit.</param>
/// <param name="OperatingSystem">Operating system.</param>
/// <param name="Architecture">Architecture of the process.</param>
/// <param name="RunTime">Run time, and whether the program is a native one.</param>
/// <param name="Culture">Culture of the user.</param>
/// <param name="At">When.</param>
/// <param name="TimeZone">Time zone of the computer.</param>
/// <param name="By">Who.</param>
public sealed record ProofRun(
    string Program,
    string OperatingSystem,
    string Architecture,
    string RunTime,
    string Culture,
    DateTimeOffset At,
    string TimeZone,
    string By
)
{
    /// <summary>What it is about, each with its name.</summary>
    public ImmutableArray<(string Name, string Value)> Facts =>
        [
            ("Program", Program),
            ("Operating system", OperatingSystem),
            ("Architecture", Architecture),
            ("Run time", RunTime),
            ("Culture of the user", Culture),
            ("Date and time", At.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture)),
            ("Time zone", TimeZone),
            ("Run by", By),
        ];
}
