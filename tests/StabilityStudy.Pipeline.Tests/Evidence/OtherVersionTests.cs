using StabilityStudy.Core.Criteria;
using StabilityStudy.Files.Json;
using StabilityStudy.Pipeline.Signing;
using StabilityStudy.Pipeline.Tests.Studies;
using StabilityStudy.Pipeline.Verification;
using StabilityStudy.Pipeline.Versions;

namespace StabilityStudy.Pipeline.Tests.Evidence;

/// <summary>Reports that say another version made them. Reports that a released version really made: <see cref="ReleasedReportsTests"/>.</summary>
public sealed class OtherVersionTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static readonly ReleasedVersion s_earlier = ReleasedVersion.Current with
    {
        Version = "0.1.9",
    };

    private static AttachedStudy Study(
        string version,
        Func<string, string>? change = null,
        int rules = DecisionRules.Number
    )
    {
        Assert.True(
            AttachedStudy.TryRead(Report(version, change, rules), out var study, out var fault),
            fault
        );
        return study;
    }

    private static ReadOnlyMemory<byte> Report(
        string version,
        Func<string, string>? change = null,
        int rules = DecisionRules.Number
    ) =>
        ForgedReport.OnePage(
            (name, text) =>
                name == AnalysisJson.FileName
                    ? (change ?? (same => same))(
                        Replaced(
                            Replaced(
                                text,
                                $"\"toolVersion\": \"{ToolVersion.Current}\"",
                                $"\"toolVersion\": \"{version}\""
                            ),
                            Rules(DecisionRules.Number),
                            Rules(rules)
                        )
                    )
                    : text
        );

    private static string Rules(int number) =>
        string.Create(CultureInfo.InvariantCulture, $"\"rules\": {number},");

    private static string Replaced(string text, string from, string to)
    {
        Assert.Contains(from, text, Comparison);
        var at = text.IndexOf(from, Comparison);
        return text[..at] + to + text[(at + from.Length)..];
    }

    private static VerifiedPart Part(AttachedStudy study, ReleasedVersion? released = null) =>
        RecomputationPart.Of(
            Recomputation.Of(study, version => version == "0.1.9" ? released ?? s_earlier : null),
            study.Stated
        );

    private static void Is(PartOutcome outcome, string words, VerifiedPart part)
    {
        var all = string.Join(' ', part.Sentences);
        Assert.True(part.Outcome == outcome, all);
        Assert.Contains(words, all, Comparison);
    }

    [Theory]
    [InlineData("0.1.0")]
    [InlineData("0.0.1")]
    [InlineData("next")]
    [InlineData("")]
    public void A_version_that_was_never_released_fails(string version) =>
        Is(PartOutcome.Fails, "no released version", Part(Study(version)));

    [Theory]
    [InlineData("99.0.0")]
    [InlineData("99.0.0-dev")]
    public void A_later_version_is_named_to_be_used(string version)
    {
        Is(PartOutcome.NotChecked, $"Use version {version} or a later one", Part(Study(version)));
        Assert.Contains(
            "What the file states was NOT checked",
            string.Join(
                ' ',
                VerificationText.Lines(EvidenceExample.Verify(Report(version)), width: 1000)
            ),
            Comparison
        );
        Assert.Contains(
            "Sign it with that version",
            Assert
                .IsType<SigningAttempt.Refused>(
                    EvidenceExample.Sign(Report(version), "author", EvidenceExample.Author)
                )
                .Why,
            Comparison
        );
    }

    [Fact]
    public void A_report_of_an_earlier_version_has_its_figures_but_not_its_pages_recomputed() =>
        Is(PartOutcome.NotChecked, "Pages not recomputed", Part(Study("0.1.9")));

    [Fact]
    public void Rules_or_a_format_that_the_version_did_not_have_fail()
    {
        Is(PartOutcome.Fails, "and rules 7", Part(Study("0.1.9", rules: 7)));
        Is(
            PartOutcome.Fails,
            "states format 2",
            Part(Study("0.1.9", text => Replaced(text, "\"format\": 3", "\"format\": 2")))
        );
    }

    [Theory]
    [InlineData("\"conclusion\": \"supported\"", "\"conclusion\": \"not-supported\"")]
    [InlineData("\"verdict\": \"met\"", "\"verdict\": \"not-met\"")]
    [InlineData("\"conclusion\": \"supported\",", "")]
    [InlineData("\"counted\": 20", "\"counted\": 19")]
    [InlineData("\"sha256\": \"", "\"sha256\": \"0")]
    public void Under_the_same_rules_another_conclusion_verdict_count_or_hash_fails(
        string from,
        string to
    ) =>
        Is(
            PartOutcome.Fails,
            "in the report",
            Part(Study("0.1.9", text => Replaced(text, from, to)))
        );

    [Fact]
    public void Under_other_rules_another_conclusion_is_to_be_reviewed()
    {
        var earlier = s_earlier with { Rules = 0 };
        var study = Study(
            "0.1.9",
            text =>
                Replaced(
                    text,
                    "\"conclusion\": \"supported\"",
                    "\"conclusion\": \"not-supported\""
                ),
            rules: 0
        );

        Is(PartOutcome.NotChecked, "have it reviewed", Part(study, earlier));
        Is(PartOutcome.NotChecked, "not-supported", Part(study, earlier));
        Is(
            PartOutcome.Fails,
            "in the report",
            Part(
                Study(
                    "0.1.9",
                    text => Replaced(text, "\"inputDigest\": \"", "\"inputDigest\": \"0"),
                    rules: 0
                ),
                earlier
            )
        );
    }

    [Fact]
    public void What_this_version_does_not_know_is_listed_and_never_holds()
    {
        Is(
            PartOutcome.NotChecked,
            "analysis.more",
            Part(Study("0.1.9", text => Replaced(text, "\"rules\":", "\"more\": 1, \"rules\":")))
        );
        Is(
            PartOutcome.NotChecked,
            "no-doubt",
            Part(
                Study(
                    "0.1.9",
                    text =>
                        Replaced(
                            text,
                            "\"code\": \"controls-not-checked\"",
                            "\"code\": \"no-doubt\""
                        )
                ),
                s_earlier with
                {
                    QueryCodes = s_earlier.QueryCodes.Remove("controls-not-checked"),
                }
            )
        );
    }

    [Theory]
    [InlineData("\"kind\": \"compared\", \"rules\":", "analysis.kind")]
    [InlineData("\"more\": 1, \"rules\":", "analysis.more")]
    public void What_is_added_is_named(string added, string named) =>
        Is(
            PartOutcome.NotChecked,
            named,
            Part(Study("0.1.9", text => Replaced(text, "\"rules\":", added)))
        );

    [Theory]
    [InlineData("cell.robustness", "robustness")]
    [InlineData("cell.pairs", "pairs")]
    [InlineData("clusteredMeanInterval.lower", "lower")]
    [InlineData("criterionResult:individual.reasons", "reasons")]
    public void What_the_version_stated_may_not_be_taken_out(string name, string property)
    {
        var study = Study(
            "0.1.9",
            text => Replaced(text, $"\"{property}\": ", $"\"{property}-moved\": ")
        );

        Assert.Contains(name, ReleasedVersion.Current.Properties);
        Is(PartOutcome.Fails, $".{property} is missing in the report", Part(study));
    }

    [Fact]
    public void What_the_version_never_stated_is_listed()
    {
        var study = Study(
            "0.1.9",
            text => Replaced(text, "\"robustness\": ", "\"robustness-moved\": ")
        );

        Is(
            PartOutcome.NotChecked,
            ".robustness",
            Part(
                study,
                s_earlier with
                {
                    Properties = s_earlier.Properties.Remove("cell.robustness"),
                }
            )
        );
    }

    [Fact]
    public void A_data_query_that_both_versions_know_may_not_be_missing() =>
        Is(
            PartOutcome.Fails,
            "controls-not-checked",
            Part(
                Study(
                    "0.1.9",
                    text =>
                        Replaced(
                            text,
                            "\"code\": \"controls-not-checked\"",
                            "\"code\": \"no-doubt\""
                        )
                )
            )
        );

    [Fact]
    public void A_statement_of_another_version_says_what_was_accepted()
    {
        Assert.True(AttachedStudy.TryRead(EvidenceExample.Unsigned, out var study, out _));
        var statement = new SignedStatement("author", null, null, "ab", ToolVersion.Current, []);

        Assert.Empty(SigningRules.OfVersions(statement, study.Stated.ToolVersion));
        Assert.Equal(
            PartOutcome.Fails,
            Assert
                .Single(
                    SigningRules.OfVersions(
                        statement with
                        {
                            ToolVersion = "9.0.0",
                        },
                        study.Stated.ToolVersion
                    )
                )
                .Outcome
        );
        var accepted = Assert.Single(
            SigningRules.OfVersions(
                statement with
                {
                    ToolVersion = "9.0.0",
                    AcceptedNotRecomputed = ["the pages"],
                },
                study.Stated.ToolVersion
            )
        );
        Assert.Equal(PartOutcome.Holds, accepted.Outcome);
        Assert.Contains("the pages", accepted.What, Comparison);
    }

    [Fact]
    public void A_release_keeps_its_form_its_rules_and_its_codes()
    {
        if (!ToolVersion.Current.Contains('-', Comparison))
        {
            RepositoryFile.RequireSame(
                $"src/StabilityStudy.Pipeline/Versions/Released/{ToolVersion.Current}.txt",
                ReleasedVersion.Current.ToText()
            );
        }

        Assert.StartsWith("format 3\nrules ", ReleasedVersion.Current.ToText(), Comparison);
        Assert.Contains("\noutlier-flagged\n", ReleasedVersion.Current.ToText(), Comparison);
    }
}
