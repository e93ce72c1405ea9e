using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Bench;
using StabilityStudy.Reporting.Pdf;
using StabilityStudy.Reporting.Text;

namespace StabilityStudy.Reporting.Approved;

/// <summary>A document by which a bench works. The zero member comes first at the bench.</summary>
public enum ApprovedDocumentKind
{
    /// <summary>Bench card.</summary>
    Card,

    /// <summary>Rule table for the laboratory information system, with its boundary cases.</summary>
    Rules,

    /// <summary>Procedure text for the manual.</summary>
    Procedure,

    /// <summary>Wording for clients.</summary>
    Clients,

    /// <summary>Sign-off sheet for training.</summary>
    Training,
}

/// <summary>The documents of the approved windows of an analyte in a storage.</summary>
public static class ApprovedDocuments
{
    /// <summary>Draws a document.</summary>
    public static DrawnReport Draw(ApprovedDocumentKind kind, BenchRules rules, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(rules);
        return Model(kind, rules, paper) is { } model
            ? PdfDrawing.Draw(model)
            : PdfDrawing.DrawPages(
                Title(kind, rules),
                SheetPage.Lying(paper).Frame,
                canvas =>
                {
                    var sheets = new BenchCard(rules, paper).Sheets();
                    foreach (var (i, draw) in sheets.Index())
                    {
                        draw(
                            canvas,
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"card {i + 1} of {sheets.Length}"
                            )
                        );
                    }
                }
            );
    }

    /// <summary>Title of a document.</summary>
    public static string Title(ApprovedDocumentKind kind, BenchRules rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        return Model(kind, rules, PaperSize.A4)?.Title
            ?? $"{rules.Analyte}: how old may the tube be?";
    }

    /// <summary>The rule table as CSV.</summary>
    public static string RulesCsv(BenchRules rules) => new RuleTableCsv(rules).Lines();

    /// <summary>Its boundary cases as CSV.</summary>
    public static string CasesCsv(BenchRules rules) => new RuleTableCsv(rules).Cases();

    /// <summary>A document as plain text; the card, which is drawn, has none.</summary>
    internal static string? Text(ApprovedDocumentKind kind, BenchRules rules) =>
        Model(kind, rules, PaperSize.A4) is { } model ? TextDrawing.Draw(model) : null;

    private static ReportModel? Model(
        ApprovedDocumentKind kind,
        BenchRules rules,
        PaperSize paper
    ) =>
        kind switch
        {
            ApprovedDocumentKind.Card => null,
            ApprovedDocumentKind.Rules => new RuleTable(rules).Model(paper),
            ApprovedDocumentKind.Procedure => new ProcedureText(rules).Model(paper),
            ApprovedDocumentKind.Clients => new ClientWording(rules).Model(paper),
            ApprovedDocumentKind.Training => new TrainingSheet(rules).Model(paper),
        };
}
