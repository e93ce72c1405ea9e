using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Planning;
using StabilityStudy.Reporting.Report.Criteria;
using StabilityStudy.Reporting.Report.Plan;

namespace StabilityStudy.Reporting.Report.Protocol;

/// <summary>
/// The protocol as a document that is read and signed before the first collection: what is asked, what is likely to come out, by which limits and criteria it is decided, and how it is done. That of an
/// amendment begins with what changed.
/// </summary>
public static class ProtocolDocument
{
    private const int DigestShown = 16;

    /// <summary>The document.</summary>
    /// <param name="protocol">The protocol, with those who sign this document and what their signatures mean.</param>
    /// <param name="plan">What the study takes and can show, planned from the same protocol.</param>
    /// <param name="sha256">SHA-256 of protocol.toml, lower-case hexadecimal.</param>
    /// <param name="paper">Paper size.</param>
    /// <param name="amendment">What it amends; null for a protocol that amends nothing.</param>
    public static ReportModel Build(
        StudyProtocol protocol,
        StudyPlan plan,
        string sha256,
        PaperSize paper,
        ProtocolAmendment? amendment
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(protocol);
        ArgumentNullException.ThrowIfNull(sha256);
        var about = Subject(protocol);
        ImmutableArray<Block> foot = [.. DocumentFoot.Of(protocol, amendment)];
        return new ReportModel(
            amendment is null
                ? $"Study protocol: {about}"
                : $"Amendment {NumberText.Count(amendment.Number)} of the study protocol: {about}",
            "en-US",
            paper,
            new RunningHeader(
                $"{protocol.Code} · version {protocol.Version}"
                    + (
                        amendment is null
                            ? ""
                            : $" · amendment {NumberText.Count(amendment.Number)}"
                    ),
                "valid only with the signatures on page 1",
                $"protocol {sha256[..DigestShown]} · protocol.toml is attached to this file"
            ),
            [
                .. amendment is null
                    ? ImmutableArray<Section>.Empty
                    : [AmendmentPage.Of(amendment, foot)],
                Approved(plan, amendment is null ? foot : []),
                Conduct(protocol),
                .. Sources(protocol) is { Blocks.IsEmpty: false } sources
                    ? [sources]
                    : ImmutableArray<Section>.Empty,
                Rules(protocol),
                Chances(plan),
                DocumentFoot.Cautions(amendment),
            ]
        );
    }

    /// <summary>"aPTT in whole blood", as short as a title has to be.</summary>
    private static string Subject(StudyProtocol protocol)
    {
        const int mostNamed = 3;
        var analytes =
            protocol.Analytes is [var only] ? only.Name
            : protocol.Analytes.Length > mostNamed
                ? $"{NumberText.Count(protocol.Analytes.Length)} tests"
            : string.Join(", ", protocol.Analytes.Select(analyte => analyte.Id));
        var states = string.Join(
            " and ",
            protocol.Storages.Select(storage => StorageWords.Of(storage.State)).Distinct()
        );
        return $"{analytes} in {states}";
    }

    private static Section Approved(StudyPlan plan, ImmutableArray<Block> foot)
    {
        var protocol = plan.Protocol;
        return new(
            "What is asked and what is approved",
            // Below the places to sign of an amendment there is room for it.
            StartsOnNewPage: !foot.IsEmpty,
            [
                new Paragraph(Question(protocol), ParagraphStyle.Lead),
                ExpectedTable.Of(plan),
                new DefinitionList([
                    .. new CriteriaInBrief(plan).Statements(),
                    .. Scope.Of(protocol),
                ])
                {
                    IsRuled = true,
                },
            ]
        )
        {
            Foot = foot,
        };
    }

    private static string Question(StudyProtocol protocol)
    {
        var analytes = string.Join(
            ", ",
            protocol.Analytes.Select(analyte =>
                analyte.Name == analyte.Id ? analyte.Name : $"{analyte.Name} ({analyte.Id})"
            )
        );
        var storages = string.Join(", or as ", protocol.Storages.Select(TradeWords.Of));
        return $"How long may a specimen wait as {storages}, before it is tested? {analytes}.";
    }

    private static Section Conduct(StudyProtocol protocol) =>
        new(
            "How the study is run",
            StartsOnNewPage: false,
            [new DefinitionList([.. DocumentConduct.Of(protocol)])]
        )
        {
            IsLookedUp = true,
        };

    private static Section Sources(StudyProtocol protocol) =>
        new(
            "Other rules, what others found, and where limits come from",
            StartsOnNewPage: false,
            [
                .. OtherRules.Of(protocol).ToImmutableArray() is { IsEmpty: false } others
                    ? [new DefinitionList(others)]
                    : ImmutableArray<Block>.Empty,
                .. LimitSources.Blocks(protocol),
                .. MissingRationales.Of(protocol) is { } missing
                    ? (ImmutableArray<Block>)
                        [
                            new Paragraph(
                                $"The protocol does not state {missing}.",
                                ParagraphStyle.Small
                            ),
                        ]
                    : [],
            ]
        )
        {
            IsLookedUp = true,
        };

    private static Section Rules(StudyProtocol protocol) =>
        new(
            "When a criterion is met, to the letter",
            StartsOnNewPage: false,
            [
                new DefinitionList([
                    .. protocol.Criteria.Select(criterion =>
                    {
                        var rule = CriterionWords.OfRule(criterion, protocol);
                        return new Definition(
                            criterion.Id,
                            $"Met when {rule.MetWhen} Not met when {rule.NotMetWhen}{RationaleWords.Stated("this share", criterion.Rationale, [])}"
                        );
                    }),
                ]),
                new Bullets(DoubtRules.Of(protocol)),
            ]
        )
        {
            IsLookedUp = true,
        };

    private static Section Chances(StudyPlan plan) =>
        new(
            "How many specimens, and how the chances were computed",
            StartsOnNewPage: false,
            [
                new Bullets([
                    .. PlanAnswer.Material(plan),
                    .. LevelWords.Of(plan),
                    .. PlanReservations.Of(plan),
                    PlanSuppositions.Simulated(plan),
                    .. PlanSuppositions.Supposed(plan),
                    PlanSuppositions.LeftOut,
                ]),
            ]
        )
        {
            IsLookedUp = true,
        };
}
