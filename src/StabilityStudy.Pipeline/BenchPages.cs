using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Canonical;
using StabilityStudy.Files.Intake;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline;

/// <summary>The pages for the bench of a study.</summary>
public static class BenchPages
{
    /// <summary>Most tests of one specimen that a sheet holds.</summary>
    public const int MostTests = 16;

    /// <summary>Reads what the pages need of a study.</summary>
    /// <param name="files">The files of the study folder.</param>
    /// <param name="request">What is asked for.</param>
    /// <returns>The parts, or the queries of which at least one stops, or what does not fit in words.</returns>
    public static BenchPagesAnswer Of(StudyBytes files, BenchRequest request)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(request);

        // The windows of tubes do not depend on the moment; which tests stand open does, and is not shown.
        var checkedStudy = CheckedStudy.Of(files, DateTimeOffset.MinValue);
        if (checkedStudy is not { Inputs: { } inputs, Inventory: { } inventory })
        {
            return new BenchPagesAnswer.Stopped([
                .. checkedStudy.Queries.Where(query => query.Severity == Severity.Stop),
            ]);
        }

        var protocol = inputs.Protocol;
        var sha256 = InputDigest.Sha256(files.Files[StudyBytes.ProtocolName].Span);
        var seed = request.Seed ?? RunOrder.SeedOf(sha256);
        var study = new BenchStudy(protocol, sha256, inputs.Facts.Invented, request.Paper, seed)
        {
            Clocks = inputs.Facts.Clocks,
            Zone =
                inputs.Facts.TimeZone is { } name
                && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone)
                    ? zone
                    : null,
        };
        var unread = checkedStudy
            .Queries.Where(query =>
                query.Severity == Severity.Stop
                && query.Source.File == inputs.Facts.Files.Specimens
                && query.Source.Line is not null
            )
            .Select(query => query.Source.Line)
            .Distinct()
            .Count();
        return new Composition(request, inputs, inventory, study, unread).Parts();
    }

    /// <summary>Draws the pages.</summary>
    /// <param name="parts">What <see cref="Of"/> found.</param>
    /// <returns>The bytes of the PDF: the same for the same inputs and seed.</returns>
    public static RenderedReport Render(BenchPagesAnswer.Ready parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return DrawnDocument.Finish(
            BenchDrawing.Draw(parts.Study, parts.Parts),
            BenchDrawing.Title(parts.Study)
        );
    }

    private sealed class Composition(
        BenchRequest request,
        Core.Specimens.StudyInputs inputs,
        Core.Collecting.CollectionInventory inventory,
        BenchStudy study,
        int unread
    )
    {
        private bool HasFrozen => study.Protocol.Storages.Any(RunListPlan.IsFrozen);

        public BenchPagesAnswer Parts()
        {
            var kinds = request.Kinds.IsEmpty
                ?
                [
                    BenchPageKind.Draw,
                    .. HasFrozen ? [BenchPageKind.Frozen] : ImmutableArray<BenchPageKind>.Empty,
                    BenchPageKind.Temperature,
                    BenchPageKind.Labels,
                ]
                : request.Kinds;
            var (codes, unread) = Codes();
            if (unread is not null)
            {
                return new BenchPagesAnswer.NotFitting(unread);
            }

            var specimens = DrawPlan.Of(
                study.Protocol,
                codes,
                study.Seed,
                withSpare: !request.WithoutSpare
            );
            var parts = ImmutableArray.CreateBuilder<BenchPart>();
            foreach (var kind in kinds.Distinct())
            {
                var (part, fault) = Part(kind, specimens);
                if (part is null)
                {
                    return new BenchPagesAnswer.NotFitting(fault);
                }

                parts.Add(part);
            }

            return new BenchPagesAnswer.Ready(study, parts.ToImmutable())
            {
                AlreadyThere =
                [
                    .. kinds.Contains(BenchPageKind.Draw)
                        ? specimens
                            .Select(specimen => specimen.Code)
                            .Intersect(inputs.Tubes.Select(tube => tube.Specimen))
                        : [],
                ],
            };
        }

        private (ImmutableArray<SpecimenCode> Codes, string? Fault) Codes()
        {
            if (request.Specimens.IsEmpty)
            {
                return (SpecimenCode.OfDay(study.Protocol, request.Day, inputs.Tubes), null);
            }

            var codes = ImmutableArray.CreateBuilder<SpecimenCode>();
            foreach (var text in request.Specimens)
            {
                var group = text[..Math.Max(0, text.IndexOf('=', StringComparison.Ordinal))];
                if (study.Protocol.Groups.All(item => item.Id != group))
                {
                    return (
                        [],
                        $"\"{text}\" names no group of the protocol before \"=\". The groups are {string.Join(", ", study.Protocol.Groups.Select(item => item.Id))}"
                    );
                }

                if (SpecimenCode.Range(text[(group.Length + 1)..], group) is not { } range)
                {
                    return (
                        [],
                        $"\"{text}\": write the first and the last code of the group, such as {group}=N-001..N-004, with letters, digits, hyphens, points and at most 20 characters"
                    );
                }

                codes.AddRange(range);
            }

            return codes.GroupBy(code => code.Code).FirstOrDefault(same => same.Count() > 1)
                    is { } twice
                    ? ([], $"{twice.Key} is named twice")
                : codes.Count > SpecimenCode.Most ? ([], $"{SpecimenCode.Most} specimens at most")
                : (codes.ToImmutable(), null);
        }

        private static bool NeedsSpecimens(BenchPageKind kind) =>
            kind is BenchPageKind.Draw or BenchPageKind.Frozen or BenchPageKind.Labels;

        private (BenchPart? Part, string Fault) Part(
            BenchPageKind kind,
            ImmutableArray<BenchSpecimen> specimens
        )
        {
            if (NeedsSpecimens(kind) && specimens.IsEmpty)
            {
                return (
                    null,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"on day {request.Day} the planned numbers are complete. Name the specimens with --specimens"
                    )
                );
            }

            if (
                NeedsSpecimens(kind)
                && specimens.FirstOrDefault(item => item.Tubes.Length > MostTests) is { } large
            )
            {
                return (
                    null,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{large.Code} has {large.Tubes.Length} planned tests, and a sheet holds {MostTests} of a specimen"
                    )
                );
            }

            switch (kind)
            {
                case BenchPageKind.Draw:
                    return (new BenchPart.Draw(request.Day, specimens), "");
                case BenchPageKind.Frozen when !HasFrozen:
                    return (null, "the protocol has no frozen storage");
                case BenchPageKind.Frozen:
                    return (new BenchPart.Frozen(request.Day, specimens, Collected()), "");
                case BenchPageKind.Temperature:
                    return (new BenchPart.Temperature(), "");
                case BenchPageKind.Labels:
                    var stock = request.Labels ?? LabelStock.Usual(study.Paper);
                    var labels = new BenchPart.Labels(request.Day, specimens, stock);
                    return
                        (stock.Fault(study.Paper) ?? BenchDrawing.LabelFault(study, labels))
                            is { } fault
                        ? (null, fault)
                        : (labels, "");
                case BenchPageKind.RunList:
                    return RunList();
                default:
                    throw new ArgumentOutOfRangeException(nameof(kind));
            }
        }

        private ImmutableDictionary<string, DateTimeOffset> Collected() =>
            inputs
                .Tubes.DistinctBy(tube => tube.Specimen)
                .ToImmutableDictionary(tube => tube.Specimen, tube => tube.CollectedAt);

        private (BenchPart? Part, string Fault) RunList()
        {
            var days = RunListPlan.DaysOf(inputs);
            if (days.IsEmpty)
            {
                return (
                    null,
                    $"{inputs.Facts.Files.Specimens} has no {(study.Protocol.TimeOrigin == Core.Protocol.TimeOrigin.Thawing ? "time of thawing" : "collection time")} yet, and the run list goes by the clock. Enter the tubes first"
                );
            }

            var day = request.Date ?? days[^1];
            var number = days.IndexOf(day) + 1;
            if (number == 0)
            {
                return (
                    null,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{inputs.Facts.Files.Specimens} has no specimen of {day:yyyy-MM-dd}. The days are {string.Join(", ", days.Select(item => item.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)))}"
                    )
                );
            }

            var list = RunListPlan.Of(inputs, inventory, day, study.Seed);
            return list.Runs.IsEmpty && list.WithoutTime.IsEmpty
                ? (
                    null,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"no tube of {day:yyyy-MM-dd} waits for a run: frozen ones have a sheet of their own (--page frozen)"
                    )
                )
                : (new BenchPart.DueTubes(number, list) { Unread = unread }, "");
        }
    }
}

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
