using System.Text;
using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Approved;
using StabilityStudy.Reporting.Model;

namespace StabilityStudy.Pipeline.Register;

/// <summary>The documents by which a bench works, made from the verified reports of a register.</summary>
public static class BenchDocuments
{
    /// <summary>From the spin to the test where neither the protocol nor the caller says how long it takes.</summary>
    private static readonly TimeSpan s_spinTakes = TimeSpan.FromMinutes(30);

    /// <summary>The rules of what is asked for; those with an obstacle give no document.</summary>
    /// <param name="register">The register.</param>
    /// <param name="day">The day as of which they hold.</param>
    /// <param name="analyte">Key of the analyte; null for all.</param>
    /// <param name="storage">Key of the storage; null for all.</param>
    /// <param name="spinTakes">Time from the spin to the test at this bench; null for what the protocols say.</param>
    public static ImmutableArray<BenchRules> RulesOf(
        WindowRegister register,
        DateOnly day,
        string? analyte,
        string? storage,
        TimeSpan? spinTakes
    ) =>
        [
            .. BenchRules
                .Subjects(register, day)
                .Where(subject =>
                    (analyte is null || subject.Analyte == analyte)
                    && (storage is null || subject.Storage == storage)
                )
                .Select(subject =>
                    BenchRules.Of(
                        register,
                        subject.Analyte,
                        subject.Storage,
                        subject.Scope,
                        day,
                        spinTakes ?? SpinTakesOf(register, day, subject.Analyte, subject.Storage)
                    )
                ),
        ];

    /// <summary>Longest time from the spin to the test that the protocols of some rules allow; null where they do not say.</summary>
    public static TimeSpan? LongestSpinToTest(BenchRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        return rules.Rows.Min(item => item.Window.Handling?.Storage.SpinToTest);
    }

    /// <summary>Draws a document.</summary>
    public static ReadOnlyMemory<byte> Pdf(
        ApprovedDocumentKind kind,
        BenchRules rules,
        PaperSize paper
    ) =>
        DrawnDocument
            .Finish(
                ApprovedDocuments.Draw(kind, rules, paper),
                ApprovedDocuments.Title(kind, rules)
            )
            .Pdf;

    /// <summary>The rule table and its cases for a system to read.</summary>
    public static (ReadOnlyMemory<byte> Rules, ReadOnlyMemory<byte> Cases) Csv(BenchRules rules) =>
        (
            Encoding.UTF8.GetBytes(ApprovedDocuments.RulesCsv(rules)),
            Encoding.UTF8.GetBytes(ApprovedDocuments.CasesCsv(rules))
        );

    private static TimeSpan SpinTakesOf(
        WindowRegister register,
        DateOnly day,
        string analyte,
        string storage
    )
    {
        ImmutableArray<RegisteredHandling> handlings =
        [
            .. register
                .On(day)
                .Where(item =>
                    item.Report.Counts
                    && item.Window.Row.Analyte == analyte
                    && item.Window.Row.Storage == storage
                )
                .Select(item => item.Window.Handling)
                .OfType<RegisteredHandling>(),
        ];
        var stated = handlings.Max(item => item.Storage.SpinTakes) ?? s_spinTakes;
        return handlings.Min(item => item.Storage.SpinToTest) is { } longest && longest < stated
            ? longest
            : stated;
    }
}
