using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Pdf;

namespace StabilityStudy.Reporting.Bench;

/// <summary>What every page for the bench says of its study.</summary>
/// <param name="Protocol">The protocol.</param>
/// <param name="ProtocolSha256">SHA-256 of protocol.toml, lower-case hexadecimal.</param>
/// <param name="IsInvented">Whether the study is an invented example.</param>
/// <param name="Paper">Paper size.</param>
/// <param name="Seed">Seed of the run order.</param>
public sealed record BenchStudy(
    StudyProtocol Protocol,
    string ProtocolSha256,
    bool IsInvented,
    PaperSize Paper,
    int Seed
)
{
    private const int DigestShown = 16;
    private const string StudyOnly = "study specimens: results never enter a patient's record";

    /// <summary>Whose clocks the times are.</summary>
    public ImmutableArray<Clock> Clocks { get; init; } = [];

    /// <summary>The zone whose clock is on the wall; null where times keep the offset of their collection.</summary>
    public TimeZoneInfo? Zone { get; init; }

    internal string Left => $"{Invented}{Protocol.Code} · version {Protocol.Version}";

    internal string Invented => IsInvented ? "INVENTED EXAMPLE · " : "";

    internal string Digest =>
        "protocol "
        + string.Join(' ', ProtocolSha256[..DigestShown].Chunk(4).Select(part => new string(part)));

    internal string Footer => $"{Digest} · {SeedWords} · {StudyOnly}";

    internal string SeedWords =>
        string.Create(CultureInfo.InvariantCulture, $"run order drawn with seed {Seed}");

    internal bool IsThawing => Protocol.TimeOrigin == TimeOrigin.Thawing;

    internal bool IsPortions => Protocol.TubePlan == TubePlan.Aliquots;

    internal bool IsDrawn => Protocol.DrawsATubeForEachTest;
}

/// <summary>A kind of page with what stands on it.</summary>
public abstract record BenchPart
{
    private BenchPart() { }

    /// <summary>Draw sheet: times are offsets.</summary>
    /// <param name="Day">Day of collection, from 1.</param>
    /// <param name="Specimens">What is drawn.</param>
    public sealed record Draw(int Day, ImmutableArray<BenchSpecimen> Specimens) : BenchPart;

    /// <summary>Freezing and thawing of the portions of a day, a sheet for each planned time.</summary>
    /// <param name="Day">Day of collection, from 1.</param>
    /// <param name="Specimens">What is drawn.</param>
    /// <param name="CollectedAt">The times of collection that are known.</param>
    public sealed record Frozen(
        int Day,
        ImmutableArray<BenchSpecimen> Specimens,
        ImmutableDictionary<string, DateTimeOffset> CollectedAt
    ) : BenchPart;

    /// <summary>Delayed tubes by the clock.</summary>
    /// <param name="Day">Day of collection, from 1.</param>
    /// <param name="List">The list.</param>
    public sealed record DueTubes(int Day, RunList List) : BenchPart
    {
        /// <summary>Rows of the file of tubes that cannot be read, whose tubes are missing on the list.</summary>
        public int Unread { get; init; }
    }

    /// <summary>Temperatures where the tubes wait, a sheet for each storage.</summary>
    public sealed record Temperature : BenchPart;

    /// <summary>Labels of the tubes of a day.</summary>
    /// <param name="Day">Day of collection, from 1.</param>
    /// <param name="Specimens">What is drawn.</param>
    /// <param name="Stock">On what they are printed.</param>
    public sealed record Labels(int Day, ImmutableArray<BenchSpecimen> Specimens, LabelStock Stock)
        : BenchPart;
}
