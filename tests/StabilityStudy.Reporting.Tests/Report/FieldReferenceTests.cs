using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Reporting.Model;
using StabilityStudy.Reporting.Report.Record;

namespace StabilityStudy.Reporting.Tests.Report;

/// <summary>Which publications of the field a report names.</summary>
public sealed class FieldReferenceTests
{
    private static readonly StudyAnalysis s_study = OddStudies.All["40 pairs"];

    [Fact]
    public void Design_and_checklist_always_stand_and_the_drift_where_it_is_drawn()
    {
        // The group has no anticoagulant, and a drift of the aPTT is published.
        Assert.Equal(
            [
                "doi 10.1515/cclm-2023-0221",
                "doi 10.1515/cclm-2020-0061",
                "doi 10.1515/cclm-2025-0117",
            ],
            Addresses(s_study)
        );
        Assert.Equal(
            ["doi 10.1515/cclm-2023-0221", "doi 10.1515/cclm-2020-0061"],
            Addresses(s_study with { Sequences = [] })
        );
    }

    [Theory]
    [InlineData("US 42 CFR 493.941, PT +/- 15 %", "2022-14513")]
    [InlineData("biological variation, DOI 10.1515/TJB-2023-0155", "tjb-2023-0155")]
    [InlineData("PMID 31837560", "thromres.2019.10.019")]
    [InlineData("Sci Rep 2014, 4:3868", "srep03868")]
    public void A_source_that_the_protocol_names_stands_with_title_and_address(
        string source,
        string address
    )
    {
        var analysis = WithSource(source);
        var added = Assert.Single(
            FieldReferences.Of(analysis),
            reference => reference.Address.Contains(address, StringComparison.Ordinal)
        );

        var text = ModelText.Of([MethodsSection.Of(analysis, full: false)]);
        Assert.Contains(added.Title, text, StringComparison.Ordinal);
        Assert.Contains(added.Address, text, StringComparison.Ordinal);
        Assert.DoesNotContain(added, FieldReferences.Of(s_study));
    }

    [Fact]
    public void Each_has_a_title_an_address_and_marks_of_its_own()
    {
        Assert.All(
            FieldReference.OfSources,
            reference =>
            {
                Assert.NotEmpty(reference.Title);
                Assert.Matches("^(doi 10\\.[0-9]{4,}/|https://)[^ ]+$", reference.Address);
                Assert.NotEmpty(reference.Marks);
            }
        );
        var marks = FieldReference.OfSources.SelectMany(reference => reference.Marks).ToArray();
        Assert.Equal(marks.Length, marks.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(
            FieldReference.OfSources.Length,
            FieldReference.OfSources.Select(reference => reference.Address).Distinct().Count()
        );
    }

    /// <summary>What was found to be said otherwise by the paper stands beside it, so that no report repeats it.</summary>
    [Theory]
    [InlineData("srep03868", "no D-dimer")]
    [InlineData("ijlh.12660", "above 100 IU/dL")]
    [InlineData("200106000-00002", "at −24 °C the change stayed below 5 %")]
    [InlineData("s41598-025-95389-w", "changed by more than 15 %")]
    [InlineData("cclm-2025-0117", "limited")]
    public void What_bounds_a_figure_stands_beside_its_source(string address, string bounds) =>
        Assert.Contains(
            bounds,
            Assert
                .Single(
                    FieldReference.OfSources,
                    reference => reference.Address.Contains(address, StringComparison.Ordinal)
                )
                .Entry,
            StringComparison.Ordinal
        );

    private static StudyAnalysis WithSource(string source) =>
        s_study with
        {
            Protocol = s_study.Protocol with
            {
                Limits =
                [
                    .. s_study.Protocol.Limits.Select(limit => limit with { Source = source }),
                ],
            },
        };

    private static IEnumerable<string> Addresses(StudyAnalysis analysis) =>
        FieldReferences.Of(analysis).Select(reference => reference.Address);
}
