using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>How the study was run: specimens, storage, times, instruments, people, deviations.</summary>
internal static class ConductSection
{
    public const string Title = "How the study was run";

    public static Section Of(StudyAnalysis analysis)
    {
        var protocol = analysis.Protocol;
        return new Section(
            Title,
            // Page 1 is read, signed and copied alone.
            StartsOnNewPage: FirstPage.InFull(analysis) is null,
            [
                new DefinitionList(ProtocolDefinitions.Of(protocol, CollectionDays(analysis))),
                new Heading("Instruments, lots, clocks and people"),
                new DefinitionList([
                    .. analysis.Facts.Instruments.Select(item => new Definition(
                        "Instrument " + item.Id,
                        item.Name + (item.Site is { } site ? $", site {site}" : "")
                    )),
                    .. analysis.Facts.Lots.Select(item => new Definition(
                        "Lot " + item.Id,
                        $"{item.Kind} for {item.Analyte}"
                            + (
                                item.Expires is { } day
                                    ? ", expires "
                                        + day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
                                    : ""
                            )
                    )),
                    .. Joined(
                        "Clocks",
                        analysis.Facts.Clocks.Select(item => $"{item.Column}: {item.Description}")
                    ),
                    .. Joined(
                        "People",
                        analysis.Facts.People.Select(person =>
                            $"{person.Code}: {person.Name}, {person.Role}"
                        )
                    ),
                ]),
                .. Amendments(analysis),
                new Heading("Deviations from the protocol"),
                Deviations(analysis),
                Exclusions(analysis),
            ]
        );
    }

    private static IEnumerable<Block> Amendments(StudyAnalysis analysis)
    {
        var amendments = analysis.Lock.Locks.Where(item => item.Number > 1).ToImmutableArray();
        if (amendments.IsEmpty)
        {
            yield break;
        }

        yield return new Heading("Amendments of the protocol");
        foreach (var amendment in amendments)
        {
            yield return new Paragraph(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Lock {amendment.Number}, {amendment.At:yyyy-MM-dd HH:mm zzz} by {amendment.By}: {amendment.Reason} {AmendmentWords.Headline(amendment)}"
                ),
                ParagraphStyle.Body
            );
            if (AmendmentWords.Lines(amendment).ToImmutableArray() is { IsEmpty: false } lines)
            {
                yield return new Bullets(lines);
            }
        }
    }

    private static string CollectionDays(StudyAnalysis analysis)
    {
        var days = analysis
            .Sequences.SelectMany(sequence => sequence.Cells)
            .SelectMany(cell => cell.Pairs)
            .Select(pair => pair.CollectionDay)
            .Distinct()
            .Order()
            .ToImmutableArray();
        return days.IsEmpty
            ? "none."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{days.Length}, from {days[0]:yyyy-MM-dd} to {days[^1]:yyyy-MM-dd}; a mean needs at least {analysis.Protocol.MinimumDays}."
            );
    }

    private static Block Deviations(StudyAnalysis analysis) =>
        analysis.Facts.Deviations.IsEmpty
            ? new Paragraph("None recorded.", ParagraphStyle.Body)
            : new Bullets([
                .. analysis.Facts.Deviations.Select(item =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{item.Text} ({item.By}, {item.On:yyyy-MM-dd})"
                    )
                ),
            ]);

    private static IEnumerable<Definition> Joined(string name, IEnumerable<string> items) =>
        string.Join("; ", items) is { Length: > 0 } text ? [new Definition(name, text)] : [];

    /// <summary>Who left out which pair, and when; the reasons stand with what became of every specimen.</summary>
    private static Paragraph Exclusions(StudyAnalysis analysis) =>
        new(
            analysis.Facts.Exclusions.IsEmpty
                ? "No pair was left out by decision of a person."
                : $"Left out by decision of a person: {string.Join("; ", analysis.Facts.Exclusions.Select(Of))}. The reasons stand under \"{DispositionSection.Title}\".",
            ParagraphStyle.Body
        );

    /// <summary>"N-017, aPTT, 6 h (LS1, 2026-03-05 10:40)".</summary>
    private static string Of(Exclusion item)
    {
        string?[] what = [item.Specimen, item.Analyte, item.TimePoint?.ToString()];
        var time = item.Time is { } at ? at.ToString(" HH:mm", CultureInfo.InvariantCulture) : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{string.Join(", ", what.OfType<string>())} ({item.By}, {item.On:yyyy-MM-dd}{time})"
        );
    }
}
