using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Register;
using StabilityStudy.Core.Study;
using StabilityStudy.Files.Intake;
using StabilityStudy.Files.Protocols;
using StabilityStudy.Files.Starting;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Reporting.Register;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.Pipeline.Register;

/// <summary>What a study that repeats a signed one begins with.</summary>
/// <param name="Report">The original report, verified.</param>
/// <param name="Facts">What the original says of people, place and instruments.</param>
/// <param name="Protocol">The protocol.</param>
/// <param name="Original">The original's protocol.</param>
public sealed record RepeatStudy(
    RegisteredReport Report,
    StudyFacts Facts,
    RepeatedProtocol Protocol,
    StudyProtocol Original
)
{
    /// <summary>What whoever repeats it must know: windows that are not in force any more, a sentence each.</summary>
    public ImmutableArray<string> Notes { get; private init; } = [];

    /// <summary>Makes the protocol of a repeat from a signed report.</summary>
    /// <param name="file">Name of the file, for people.</param>
    /// <param name="pdf">The report.</param>
    /// <param name="options">Whom to trust.</param>
    /// <param name="register">The register in which the report stands, which says what became of its windows.</param>
    /// <param name="day">The day.</param>
    /// <param name="tier">How much is repeated.</param>
    /// <param name="reason">What changed.</param>
    /// <param name="fault">Why there is none, in words.</param>
    /// <returns>The study; null where there is none.</returns>
    public static RepeatStudy? Of(
        string file,
        ReadOnlyMemory<byte> pdf,
        VerificationOptions options,
        WindowRegister register,
        DateOnly day,
        RepeatTier tier,
        string reason,
        out string fault
    )
    {
        var found = ReportVerifier.Verify(pdf, options);
        if (found.Document != DocumentKind.Report)
        {
            fault = "it is no report, and a study is repeated from its signed report";
            return null;
        }

        var report = RegisterReading.Report(file, pdf, found);
        if (
            !report.Counts
            || found.Analysis is not { } analysis
            || !FirstRevision.TryRead(pdf, out var first, out _)
            || !first.Files.TryGetValue(StudyBytes.ProtocolName, out var bytes)
            || !ProtocolReader.Read(bytes, StudyBytes.ProtocolName).TryGet(out var protocol)
        )
        {
            fault = report.Why ?? "its protocol cannot be read by this version";
            return null;
        }

        var rows = StandingOf(report, register, day);
        if (
            rows.FirstOrDefault(item => item.Standing == WindowStanding.Superseded) is
            { SupersededBy: { } successor }
        )
        {
            fault = $"{successor} came in its place: repeat that report";
            return null;
        }

        ImmutableArray<string> notes =
        [
            .. rows.Where(item =>
                    item.TakenAwayBy is not null || item.Standing == WindowStanding.InDoubt
                )
                .Select(item =>
                    item.Standing == WindowStanding.InForce
                        ? $"{RegisterWords.Named(item)}: {string.Join("; ", item.Notices.Select(RegisterWords.Of))}"
                        : RegisterWords.Of(item) + (item.Doubt is { } doubt ? $" ({doubt})" : "")
                ),
        ];
        var repeat = new RepeatOf(report.Name, report.InputDigest ?? "", tier, reason);
        fault = "";
        if (tier == RepeatTier.Full)
        {
            return new(
                report,
                analysis.Facts,
                RepeatedProtocol.Full(bytes, protocol, repeat),
                protocol
            )
            {
                Notes = notes,
            };
        }

        ImmutableArray<RepeatedWindow> windows =
        [
            .. rows.Where(item =>
                    item.Standing
                        is WindowStanding.InForce
                            or WindowStanding.PastReview
                            or WindowStanding.NotYet
                )
                .Select(item => item.Window)
                .Where(window => window.Approved > window.Row.Today)
                .GroupBy(window => (window.Row.Analyte, window.Row.Group, window.Row.Storage))
                .Select(rows => new RepeatedWindow(
                    rows.Key.Analyte,
                    rows.Key.Group,
                    rows.Key.Storage,
                    rows.Max(window => window.Approved) ?? TimeSpan.Zero
                )),
        ];
        if (windows.IsEmpty)
        {
            fault = !notes.IsEmpty
                ? $"none of its windows is in force. {string.Join(" ", notes)}. A reduced study shows that a window in force holds for a new lot; whether a withdrawn one holds again asks the full study, --tier full"
                : "it put no window beyond today's rule into force, so a reduced study has nothing to repeat. The full study is --tier full";
            return null;
        }

        return new(
            report,
            analysis.Facts,
            RepeatedProtocol.Reduced(bytes, protocol, repeat, windows),
            protocol
        )
        {
            Notes = notes,
        };
    }

    /// <summary>The rows of the report as they stand in the register; where this holds no copy of it, as the report alone has them.</summary>
    private static ImmutableArray<StandingWindow> StandingOf(
        RegisteredReport report,
        WindowRegister register,
        DateOnly day
    )
    {
        ImmutableArray<StandingWindow> In(WindowRegister some) =>
            [.. some.On(day).Where(item => item.Report.IsCopyOf(report))];
        return In(register) is [_, ..] found ? found : In(new WindowRegister([report]));
    }
}
