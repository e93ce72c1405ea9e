using StabilityStudy.Core.Bench;
using StabilityStudy.Core.Collecting;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Reporting.Bench;

namespace StabilityStudy.Pipeline;

/// <summary>Puts together the pages that are asked for, or says what does not fit.</summary>
internal sealed class BenchComposition(
    BenchRequest request,
    StudyInputs inputs,
    CollectionInventory inventory,
    BenchStudy study,
    int unread
)
{
    /// <summary>Most tests of one specimen that a sheet holds.</summary>
    public const int MostTests = 16;

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
                $"{inputs.Facts.Files.Specimens} has no {(study.Protocol.TimeOrigin == TimeOrigin.Thawing ? "time of thawing" : "collection time")} yet, and the run list goes by the clock. Enter the tubes first"
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
