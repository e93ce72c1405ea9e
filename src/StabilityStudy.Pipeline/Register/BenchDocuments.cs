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
    )
    {
        ArgumentNullException.ThrowIfNull(register);
        var windows = register.On(day);
        return
        [
            .. BenchRules
                .Subjects(windows, day)
                .Where(subject =>
                    (analyte is null || subject.Analyte == analyte)
                    && (storage is null || subject.Storage == storage)
                )
                .Select(subject =>
                    BenchRules.Of(
                        windows,
                        register,
                        subject.Analyte,
                        subject.Storage,
                        subject.Scope,
                        day,
                        spinTakes ?? SpinTakesOf(windows, subject.Analyte, subject.Storage)
                    )
                ),
        ];
    }

    /// <summary>Longest time from the spin to the test that the protocols of some rules allow; null where they do not say.</summary>
    public static TimeSpan? LongestSpinToTest(BenchRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        return rules.Rows.Min(item => item.Window.Handling?.Storage.SpinToTest);
    }

    /// <summary>The word for a kind of document, in its file name and on the command line.</summary>
    public static string WordOf(ApprovedDocumentKind kind) =>
        kind switch
        {
            ApprovedDocumentKind.Card => "card",
            ApprovedDocumentKind.Rules => "rules",
            ApprovedDocumentKind.Procedure => "procedure",
            ApprovedDocumentKind.Clients => "clients",
            ApprovedDocumentKind.Training => "training",
        };

    /// <summary>The documents of some rules with the names of their files; the rule table also as CSV.</summary>
    /// <param name="rules">The rules, without an obstacle.</param>
    /// <param name="among">All rules of which there are documents, so that each has a name of its own.</param>
    /// <param name="kinds">Which documents.</param>
    /// <param name="paper">Paper size.</param>
    public static ImmutableArray<(string Name, ReadOnlyMemory<byte> Bytes)> Files(
        BenchRules rules,
        ImmutableArray<BenchRules> among,
        ImmutableArray<ApprovedDocumentKind> kinds,
        PaperSize paper
    )
    {
        var subject = NameOf(rules, among);
        var files = kinds
            .Select(kind => ($"{subject}-{WordOf(kind)}.pdf", Pdf(kind, rules, paper)))
            .ToList();
        if (kinds.Contains(ApprovedDocumentKind.Rules))
        {
            files.Add(
                ($"{subject}-rules.csv", Encoding.UTF8.GetBytes(ApprovedDocuments.RulesCsv(rules)))
            );
            files.Add(
                ($"{subject}-cases.csv", Encoding.UTF8.GetBytes(ApprovedDocuments.CasesCsv(rules)))
            );
        }

        return [.. files];
    }

    /// <summary>Analyte and storage; a number where several would have one name, such as those of several scopes.</summary>
    private static string NameOf(BenchRules rules, ImmutableArray<BenchRules> all)
    {
        var name = Subject(rules);
        var same = all.Where(item => Subject(item) == name).ToImmutableArray();
        return same.Length == 1
            ? name
            : string.Create(CultureInfo.InvariantCulture, $"{name}-{same.IndexOf(rules) + 1}");

        static string Subject(BenchRules item) => FileNamed($"{item.Analyte}-{item.Storage}");
    }

    /// <summary>A code as part of a file name.</summary>
    private static string FileNamed(string code) =>
        string.Concat(
                code.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.' ? c : '-')
            )
            .TrimStart('.');

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

    private static TimeSpan SpinTakesOf(
        ImmutableArray<StandingWindow> windows,
        string analyte,
        string storage
    )
    {
        ImmutableArray<RegisteredHandling> handlings =
        [
            .. windows
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
