using StabilityStudy.Core.Queries;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline;

/// <summary>Which pages for the bench are wanted.</summary>
/// <param name="Kinds">The kinds in order; empty for those that are printed before the draw.</param>
/// <param name="Day">Day of collection, from 1.</param>
/// <param name="Paper">Paper size.</param>
public sealed record BenchRequest(ImmutableArray<BenchPageKind> Kinds, int Day, PaperSize Paper)
{
    /// <summary>Day of the run list; null for the last one.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The specimens of groups, each as "none=N-001..N-004"; empty for those that the protocol plans for the day.</summary>
    public ImmutableArray<string> Specimens { get; init; } = [];

    /// <summary>Whether no spare tube is drawn.</summary>
    public bool WithoutSpare { get; init; }

    /// <summary>Seed of the run order; null for that of the protocol.</summary>
    public int? Seed { get; init; }

    /// <summary>On what labels are printed; null for a sheet of a common size.</summary>
    public LabelStock? Labels { get; init; }
}

/// <summary>A kind of page.</summary>
public enum BenchPageKind
{
    /// <summary>Draw sheet, with offsets.</summary>
    Draw,

    /// <summary>Delayed tubes by the clock.</summary>
    RunList,

    /// <summary>Freezing and thawing.</summary>
    Frozen,

    /// <summary>Temperatures.</summary>
    Temperature,

    /// <summary>Labels.</summary>
    Labels,
}

/// <summary>What became of a request for pages.</summary>
public abstract record BenchPagesAnswer
{
    private BenchPagesAnswer() { }

    /// <summary>Pages that can be drawn.</summary>
    /// <param name="Study">The study.</param>
    /// <param name="Parts">The pages.</param>
    public sealed record Ready(BenchStudy Study, ImmutableArray<BenchPart> Parts) : BenchPagesAnswer
    {
        /// <summary>Specimens of the draw sheet that are in the study's files already.</summary>
        public ImmutableArray<string> AlreadyThere { get; init; } = [];

        /// <summary>Rows of the file of tubes that cannot be read, where a run list was asked for: their tubes are missing there.</summary>
        public int Unread => Parts.OfType<BenchPart.DueTubes>().Sum(part => part.Unread);

        /// <summary>Whether a random run order is printed, so that its seed goes on record.</summary>
        public bool HasRunOrder =>
            Parts.Any(part => part is BenchPart.Draw or BenchPart.Frozen or BenchPart.DueTubes);
    }

    /// <summary>The study cannot be read.</summary>
    /// <param name="Queries">The queries that stop.</param>
    public sealed record Stopped(ImmutableArray<DataQuery> Queries) : BenchPagesAnswer;

    /// <summary>The study can be read, and what was asked for is not to be had.</summary>
    /// <param name="Why">Why, in words.</param>
    public sealed record NotFitting(string Why) : BenchPagesAnswer;
}
