using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Report.Record;
using StabilityStudy.Reporting.Report.TimePoints;

namespace StabilityStudy.Reporting.Inspection;

/// <summary>A clause of law or standard, where the files of a folder answer it, and what they leave open.</summary>
/// <param name="Name">The clause.</param>
/// <param name="What">What it asks for, in our own words.</param>
/// <param name="Places">Reports with pages, and files; empty where no file answers it.</param>
/// <param name="Open">What these files do not answer; null for nothing.</param>
internal sealed record AnsweredClause(string Name, string What, string Places, string? Open);

/// <summary>The clauses that a study of delay and its use at the bench answer, over the reports of which something is in force. Named from memory.</summary>
internal static class InspectionClauses
{
    private const int MostNamed = 6;

    /// <summary>The clauses.</summary>
    public static ImmutableArray<AnsweredClause> Of(InspectionContents contents)
    {
        var standing = contents
            .Register.On(contents.Terms.AsOf)
            .Where(window =>
                window.Standing
                    is WindowStanding.InForce
                        or WindowStanding.PastReview
                        or WindowStanding.InDoubt
            )
            .Select(window => window.Report)
            .ToHashSet<RegisteredReport>(ReferenceEqualityComparer.Instance);
        var inUse = contents
            .Reports.Where(item =>
                standing.Count > 0 ? standing.Contains(item.Report) : item.Report.Counts
            )
            .ToImmutableArray();
        return
        [
            .. inUse
                .SelectMany(item =>
                    RequirementClauses
                        .Of(item.Analysis, isSigned: true)
                        .Select(clause => (Report: item, Clause: clause))
                )
                .GroupBy(pair => pair.Clause.Name)
                .Select(same => Answered([.. same], contents)),
            .. Beyond(contents),
        ];
    }

    private static AnsweredClause Answered(
        ImmutableArray<(InspectedReport Report, Requirement Clause)> same,
        InspectionContents contents
    )
    {
        var clause = same[0].Clause;
        var (files, open) = ByOtherFiles(clause.Name, contents);
        var places = same.GroupBy(pair => PageOf(pair.Report, pair.Clause))
            .Where(alike => alike.Key is not null)
            .Select(alike =>
                $"page {NumberText.Count(alike.Key!.Value)} of {Named([.. alike.Select(pair => pair.Report.Report.Name)])}"
            )
            .Concat(files.IsEmpty ? [] : [string.Join(", ", files)]);
        return new(
            clause.Name,
            clause.What,
            string.Join("; ", places),
            files.IsEmpty ? Missing(same) : open
        );
    }

    /// <summary>What the reports leave open; where they differ, of which.</summary>
    private static string? Missing(
        ImmutableArray<(InspectedReport Report, Requirement Clause)> same
    )
    {
        var missing = same.GroupBy(pair => pair.Clause.Missing ?? "").ToImmutableArray();
        return missing is [var alike]
            ? alike.Key is ""
                ? null
                : alike.Key
            : string.Join(
                "; ",
                missing
                    .Where(some => some.Key.Length > 0)
                    .Select(some =>
                        $"{some.Key} ({Named([.. some.Select(pair => pair.Report.Report.Name)])})"
                    )
            );
    }

    /// <summary>The files of the folder that answer a clause better than a report alone, and what is open then.</summary>
    private static (ImmutableArray<string> Files, string? Open) ByOtherFiles(
        string clause,
        InspectionContents contents
    ) =>
        clause switch
        {
            RequirementClauses.Procedure => (
                Documents(contents, "procedure"),
                "its approval: the director signs and dates the printed text before use"
            ),
            RequirementClauses.Handling => (
                Documents(contents, "clients"),
                "labeling, and what a report lacks of collection and transport (its page \"What the report lacks\")"
            ),
            RequirementClauses.WatchedTime => (
                Documents(contents, "rules"),
                "the record that its boundary cases were run in your laboratory information system"
            ),
            RequirementClauses.Keeping => (
                [$"\"{InspectionIndex.KeepTitle}\" of this index"],
                "where the files lie and who can reach them"
            ),
            _ => ([], null),
        };

    /// <summary>What follows a study and is asked for as well.</summary>
    private static IEnumerable<AnsweredClause> Beyond(InspectionContents contents)
    {
        yield return new(
            "ISO 15189:2022, 7.5",
            "Work that does not conform: what was done, who decided, which results were looked at again",
            Named([
                .. contents
                    .Register.Notices.Where(item =>
                        item is { Counts: true, Notice.TakesAway: true }
                    )
                    .Select(item => item.File),
            ]),
            "what was found when results were looked at again, and who was told"
        );
        var sheets = Documents(contents, "training");
        yield return new(
            "42 CFR 493.1235; ISO 15189:2022, 6.2.3",
            "Staff trained and competent, on record",
            string.Join(", ", sheets),
            sheets.IsEmpty ? "all of it" : "the filled and signed sheets; the file is the form"
        );
        yield return new(
            "21 CFR 11.10(d), (g), (i), (j)",
            "Access and authority limited, people trained, written rules of accountability",
            "",
            "all of it: the laboratory's own records"
        );
        yield return new(
            "21 CFR 11.100, 11.300",
            "Who a signer is was verified before; keys and passphrases are controlled",
            "",
            "all of it: certificates show that one key signed, not how the person was identified or the key is kept"
        );
        yield return new(
            "42 CFR 493.1256",
            "Control procedures in daily use",
            "",
            "all of it: the reports show the controls of the study alone"
        );
    }

    private static ImmutableArray<string> Documents(InspectionContents contents, string word) =>
        [
            .. contents
                .Bench.SelectMany(item => item.Files)
                .Where(file => file.EndsWith($"-{word}.pdf", StringComparison.Ordinal)),
        ];

    private static int? PageOf(InspectedReport report, Requirement clause) =>
        report.Pages.Pages.TryGetValue(
            clause.Section == Requirement.EachTimePoint
                ? GroupSections.FirstTitle(report.Analysis)
                : clause.Section,
            out var page
        )
            ? page
            : null;

    private static string Named(ImmutableArray<string> names) =>
        names.Length > MostNamed
            ? $"{string.Join(", ", names.Take(MostNamed))} and {NumberText.Count(names.Length - MostNamed)} more"
            : string.Join(", ", names);
}
