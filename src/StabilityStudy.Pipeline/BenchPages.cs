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
        return new BenchComposition(request, inputs, inventory, study, unread).Parts();
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
}
