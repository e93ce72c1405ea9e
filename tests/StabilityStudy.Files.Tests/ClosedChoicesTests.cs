using StabilityStudy.Core.Criteria;
using StabilityStudy.Core.Estimates;
using StabilityStudy.Core.Specimens;
using StabilityStudy.Files.Json.Forms;

namespace StabilityStudy.Files.Tests;

/// <summary>analysis.json has a form for every record that can stand at a place of several kinds.</summary>
public sealed class ClosedChoicesTests
{
    public static TheoryData<Type, IEnumerable<Type>> Choices() =>
        new()
        {
            { typeof(VerdictReason), ReasonForms.VerdictReasonForm.Types },
            { typeof(IntervalFigure), ReasonForms.IntervalFigureForm.Types },
            { typeof(CoverageGap), ReasonForms.CoverageGapForm.Types },
            { typeof(MovedOutcome), ReasonForms.MovedOutcomeForm.Types },
            { typeof(CriterionResult), CriterionForms.ResultForm.Types },
            { typeof(Criterion), CriterionForms.RuleForm.Types },
            { typeof(ReportedResult), PairForms.ReportedResultForm.Types },
        };

    [Theory]
    [MemberData(nameof(Choices), DisableDiscoveryEnumeration = true)]
    public void Every_kind_has_a_form(Type kind, IEnumerable<Type> declared) =>
        Assert.Equal(
            kind.Assembly.GetTypes()
                .Where(type => type.IsSubclassOf(kind) && !type.IsAbstract)
                .OrderBy(type => type.Name),
            declared.OrderBy(type => type.Name)
        );
}
