namespace StabilityStudy.Core.Register;

/// <summary>A code of the register with the name that people know.</summary>
/// <param name="Code">The code.</param>
/// <param name="Name">The name; empty where none is recorded.</param>
public sealed record KnownCode(string Code, string Name);

/// <summary>
/// A question as a person types it, in the codes of the register: "aptt" and "activated partial thromboplastin time" are aPTT where nothing else is meant. Nothing is
/// guessed: a text that is neither a code nor a name, apart from capitals, or that fits two, stays as it is and is not known. A computer system's question is taken by the letter.
/// </summary>
public static class SpelledQuestion
{
    private const string Unknown = "unknown";

    /// <summary>The analytes of a register.</summary>
    public static ImmutableArray<KnownCode> Analytes(IEnumerable<RegisteredReport> reports) =>
        Once(
            Windows(reports)
                .Select(window => new KnownCode(
                    window.Row.Analyte,
                    window.Handling?.AnalyteName ?? ""
                ))
        );

    /// <summary>The question in the codes of the register.</summary>
    public static BenchQuestion In(WindowRegister register, BenchQuestion question)
    {
        ArgumentNullException.ThrowIfNull(register);
        ArgumentNullException.ThrowIfNull(question);
        if (question.CountsOpenAsNotTrue)
        {
            return question;
        }

        var analyte = Meant(question.Analyte, Analytes(register.Reports)) ?? question.Analyte;
        var windows = Windows(register.Reports)
            .Where(window => window.Row.Analyte == analyte)
            .ToImmutableArray();
        var group = Spelled(question.Group, Groups(windows));
        return question with
        {
            Analyte = analyte,
            Group = string.Equals(group, Unknown, StringComparison.OrdinalIgnoreCase)
                ? null
                : group,
            Storage = Spelled(question.Storage, Storages(windows)),
            Instrument = Spelled(
                question.Instrument,
                Codes(windows.SelectMany(window => window.Row.Instruments))
            ),
            Lot = Spelled(question.Lot, Codes(windows.SelectMany(window => window.Row.Reagents))),
        };
    }

    /// <summary>Whether a report can be about what a person calls an analyte.</summary>
    public static bool MayMean(RegisteredReport report, string analyte)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Windows.IsEmpty
            || report.Analytes.Contains(analyte, StringComparer.OrdinalIgnoreCase)
            || Meant(analyte, Analytes([report])) is not null;
    }

    internal static ImmutableArray<KnownCode> Groups(IEnumerable<RegisteredWindow> windows) =>
        Once(windows.Select(window => new KnownCode(window.Row.Group, window.GroupName)));

    internal static ImmutableArray<KnownCode> Storages(IEnumerable<RegisteredWindow> windows) =>
        Once(windows.Select(window => new KnownCode(window.Row.Storage, window.StorageWords)));

    private static ImmutableArray<KnownCode> Codes(IEnumerable<string> codes) =>
        Once(codes.Select(code => new KnownCode(code, "")));

    private static IEnumerable<RegisteredWindow> Windows(IEnumerable<RegisteredReport> reports) =>
        reports.Where(report => report.Counts).SelectMany(report => report.Windows);

    private static string? Spelled(string? text, ImmutableArray<KnownCode> known) =>
        text is null ? null : Meant(text, known) ?? text;

    /// <summary>The one code that a text is by the letter, else apart from capitals, else by its name; null for none or several.</summary>
    private static string? Meant(string text, ImmutableArray<KnownCode> known) =>
        known.Any(item => item.Code == text)
            ? text
            : Only(known.Where(item => Same(item.Code, text)))
                ?? Only(known.Where(item => Same(item.Name, text)));

    private static string? Only(IEnumerable<KnownCode> items) =>
        items.Select(item => item.Code).Distinct().ToImmutableArray() is [var one] ? one : null;

    private static bool Same(string one, string other) =>
        string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<KnownCode> Once(IEnumerable<KnownCode> items) =>
        [.. items.Distinct().OrderBy(item => item.Code, StringComparer.Ordinal)];
}
