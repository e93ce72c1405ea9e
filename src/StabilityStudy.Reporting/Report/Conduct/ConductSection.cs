using StabilityStudy.Core.Queries;
using StabilityStudy.Core.Study;
using StabilityStudy.Reporting.Report.Decision;

namespace StabilityStudy.Reporting.Report.Conduct;

/// <summary>How the study was run: specimens, storage, times, instruments, lots, clocks and people.</summary>
internal static class ConductSection
{
    public const string Title = "How the study was run";

    public static Section Of(StudyAnalysis analysis)
    {
        var protocol = analysis.Protocol;
        return new Section(
            Title,
            StartsOnNewPage: false,
            [
                new DefinitionList([
                    .. ProtocolDefinitions.InDetail(protocol),
                    .. HandlingDefinitions.Done(analysis.Facts),
                ]),
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
                        "Corrected clocks",
                        analysis.Facts.ClockCorrections.Select(Corrected)
                    ),
                    .. Joined(
                        "Times from messages",
                        analysis.Facts.SentTimes.Select(SentTimeWords.Of)
                    ),
                    .. Joined(
                        "People",
                        analysis.Facts.People.Select(person =>
                            $"{person.Code}: {person.Name}, {person.Role}"
                        )
                    ),
                ]),
            ]
        );
    }

    private static string Corrected(ClockCorrection correction) =>
        FormattableString.Invariant(
            $"{(correction.Minutes > 0 ? "+" : "−")}{Math.Abs(correction.Minutes)} min in {correction.Where}: {correction.Reason.TrimEnd('.')} ({correction.By}, {correction.On:yyyy-MM-dd}); results.csv keeps the recorded times"
        );

    private static IEnumerable<Definition> Joined(string name, IEnumerable<string> items) =>
        string.Join("; ", items) is { Length: > 0 } text ? [new Definition(name, text)] : [];
}
