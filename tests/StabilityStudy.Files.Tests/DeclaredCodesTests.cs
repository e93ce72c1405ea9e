using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Queries;
using StabilityStudy.Files.Csv;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>Codes that could tell who a person is stop the study until they are mapped away; numbers of the study's own labels may be declared, names and birth dates never.</summary>
public sealed class DeclaredCodesTests
{
    private const string Declared =
        "codes_declared = { reason = \"labels printed for this study; no list links them\", by = \"P1\", on = \"2026-03-02\" }\n";

    private static StudyBytes With(string subject, string by = "P1") =>
        GoodStudy
            .Bytes.With(
                "specimens.csv",
                GoodStudy.Utf8(
                    GoodStudy.Specimens.Replace("X-01", subject, StringComparison.Ordinal)
                )
            )
            .With(
                "study.toml",
                GoodStudy.Utf8(
                    GoodStudy.Facts.Replace(
                        "invented = true\n",
                        "invented = true\n" + Declared.Replace("P1", by, StringComparison.Ordinal),
                        StringComparison.Ordinal
                    )
                )
            );

    [Theory]
    [InlineData("2026031234")]
    [InlineData("0171 5550123")]
    public void A_number_that_is_declared_is_a_code_and_the_report_tells_the_declaration(
        string code
    )
    {
        Assert.False(
            StudyIntake
                .Read(
                    GoodStudy.Bytes.With(
                        "specimens.csv",
                        GoodStudy.Utf8(
                            GoodStudy.Specimens.Replace("X-01", code, StringComparison.Ordinal)
                        )
                    )
                )
                .TryGet(out _)
        );

        var study = CanonicalTests.Read(With(code));

        Assert.Contains(study.Inputs.Tubes, tube => tube.Subject == code);
        Assert.Equal(
            Severity.Note,
            Assert
                .Single(StudyChecks.Of(study.Inputs, ""), query => query.Code == "codes-declared")
                .Severity
        );
    }

    [Theory]
    [InlineData("Erika Mustermann")]
    [InlineData("1961-04-23")]
    [InlineData("erika@example.org")]
    public void A_name_or_birth_date_cannot_be_declared(string code) =>
        Assert.Contains(
            StudyIntake.Read(With(code)).Queries,
            query => query.Code == "looks-like-identity" && query.Severity == Severity.Stop
        );

    [Fact]
    public void Only_a_person_of_the_study_declares() =>
        Assert.False(StudyIntake.Read(With("2026031234", "P9")).TryGet(out _));

    [Theory]
    [InlineData("above; ask +49 171 5550123", "a telephone number")]
    [InlineData("call (555) 555-0123 first", "a telephone number")]
    [InlineData("sent to erika@example.org", "an e-mail address")]
    public void A_remark_with_a_telephone_number_or_address_stops(string remark, string found)
    {
        var query = Assert.Single(
            StudyIntake.Read(GoodStudy.Edited("results.csv", "above, the limit", remark)).Queries,
            query => query.Code == "looks-like-identity"
        );

        Assert.Contains(found, query.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(
            remark[^8..],
            query.Message + query.Observed,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_name_of_whoever_tested_is_not_repeated()
    {
        var query = Assert.Single(
            StudyIntake
                .Read(GoodStudy.Edited("results.csv", "C1,P1", "C1,Erika Mustermann"))
                .Queries,
            query => query.Severity == Severity.Stop
        );

        Assert.Equal("looks-like-identity", query.Code);
        Assert.DoesNotContain(
            "Mustermann",
            query.Message + query.Observed,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_telephone_number_that_begins_like_a_formula_is_not_repeated() =>
        Assert.DoesNotContain(
            "5550123",
            string.Join(
                '\n',
                StudyIntake
                    .Read(GoodStudy.Edited("specimens.csv", "X-01", "+49 171 5550123"))
                    .Queries.Select(query => query.Observed + query.Message)
            ),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("001-0017")]
    [InlineData("2026-001-A")]
    [InlineData("N-017-A")]
    [InlineData("DE01/0017")]
    [InlineData("26-03-0017")]
    [InlineData("R2 2026-03-02")]
    public void Usual_codes_and_runs_are_no_telephone_numbers(string code)
    {
        Assert.Null(IdentityShape.In(code));
        Assert.NotEqual("a telephone number", IdentityShape.Of(code));
    }
}
