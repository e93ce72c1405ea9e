namespace StabilityStudy.Cli.Tests;

/// <summary>
/// Questions as a technologist types them at three in the morning, who has not read anything: names for codes, capitals, words for units, the clock time on the label, facts left out. The
/// register: prothrombin time without anticoagulant, 8 h today and 10 h approved on AN1 with lot PT-2604 on a condition.
/// </summary>
[Trait("lane", "slow")]
public sealed class NightQuestionsTests
{
    private const StringComparison Comparison = StringComparison.Ordinal;

    private static async Task<Run> Ask(TimeProvider clock, params string[] more)
    {
        using var copy = await SignedRegister.Copy();
        return await Run.With(
            terminal => terminal with { Clock = clock },
            TestContext.Current.CancellationToken,
            ["supported-windows", copy.At("register"), "--trust", copy.At("keys"), .. more]
        );
    }

    [Theory]
    [InlineData("TEST: PT, No anticoagulant, wb-rt, 9 h of 10 h.", "pt", "none", "9 hours")]
    [InlineData(
        "TEST: PT, No anticoagulant, wb-rt, 9 h 30 min of 10 h.",
        "Prothrombin time",
        "No anticoagulant",
        "9:30"
    )]
    [InlineData(
        "DO NOT TEST: PT, No anticoagulant, wb-rt, collection time unknown. Know it? Add --waited \"2 h\" or --collected 22:10.",
        "PT",
        "NONE",
        null
    )]
    [InlineData(
        "DO NOT TEST: PT, patient group unknown, wb-rt, 9 h; at most 8 h, the shortest of today's rules. Know the group? Add --group none.",
        "PT",
        "unknown",
        "9 h"
    )]
    [InlineData(
        "ASK THE DIRECTOR: PT, group \"heparin\" not known, wb-rt, 7 h; no report in the register has a rule for heparin, which may be shorter. Do not test meanwhile. Groups here: none (No anticoagulant).",
        "PT",
        "heparin",
        "7 h"
    )]
    [InlineData(
        "ASK THE DIRECTOR: no report in the register that counts has a rule for \"aPTT\", only for PT (Prothrombin time). Do not test meanwhile.",
        "aPTT",
        "ufh",
        "7 h"
    )]
    [InlineData(
        "ASK THE DIRECTOR: PT, No anticoagulant, wb-rt, 9 h; a spin 6 h before the test is not covered (at most 1 h)",
        "PT",
        "none",
        "9 h",
        "--spun",
        "3 h"
    )]
    [InlineData(
        "ASK THE DIRECTOR: PT, No anticoagulant, wb-rt, 9 h; instrument AN2 is not covered (AN1)",
        "PT",
        "none",
        "9 h",
        "--instrument",
        "AN2"
    )]
    [InlineData(
        "TEST: PT, No anticoagulant, wb-rt, 9 h of 10 h. Condition: tubes stay closed. (",
        "PT",
        "none",
        "9 h",
        "--instrument",
        "an1",
        "--lot",
        "pt-2604"
    )]
    [InlineData(
        "ASK THE DIRECTOR: PT, No anticoagulant, wb-rt, 9 h; lot PT-2605 is not covered (PT-2604)",
        "PT",
        "none",
        "9 h",
        "--lot",
        "PT-2605"
    )]
    [InlineData(
        "ASK THE DIRECTOR: PT: no report in the register that counts has a rule for storage \"plasma\", only for wb-rt (whole blood, closed, 18 to 25 °C).",
        "PT",
        "none",
        "3 h",
        "--storage",
        "plasma"
    )]
    [InlineData(
        "DO NOT TEST: PT, clotted: unfit whatever its age.",
        "PT",
        "none",
        "3 h",
        "--unfit",
        "clotted"
    )]
    public async Task A_question_has_its_answer(
        string answer,
        string analyte,
        string group,
        string? waited,
        params string[] more
    )
    {
        var run = await Ask(
            TimeProvider.System,
            [
                "--analyte",
                analyte,
                "--group",
                group,
                .. waited is null ? [] : new[] { "--waited", waited },
                .. more,
            ]
        );

        Assert.StartsWith(answer, run.Out, Comparison);
    }

    [Theory]
    [InlineData("22:10", "4 h 55 min of ")]
    [InlineData("3:04", "1 min ")]
    [InlineData("03:06", "23 h 59 min; at most 10 h")]
    [InlineData("DAY-BEFORE 19:00", "8 h 05 min of 10 h")]
    [InlineData("DAY-BEFORET18:00", "9 h 05 min of 10 h")]
    public async Task The_clock_time_on_the_label_does_for_the_age(string collected, string says)
    {
        var run = await Ask(
            new Night(),
            "--analyte",
            "PT",
            "--group",
            "none",
            "--collected",
            Night.Day(collected)
        );

        Assert.Contains(
            $"PT, No anticoagulant, wb-rt, {says.TrimEnd(' ', 'o', 'f')}",
            run.Out,
            Comparison
        );
    }

    [Theory]
    [InlineData("DAY 03:06", "lies in the future")]
    [InlineData("22:70", "is no time. Write it as 22:10")]
    [InlineData("yesterday", "is no time. Write it as 22:10")]
    public async Task A_time_that_cannot_be_is_told(string collected, string says)
    {
        var run = await Ask(new Night(), "--analyte", "PT", "--collected", Night.Day(collected));

        Assert.Equal(ExitCode.WrongUsage, run.Code);
        Assert.Contains(says, run.Error, Comparison);
    }

    [Fact]
    public async Task It_goes_with_no_other_age_or_day()
    {
        var both = await Ask(
            new Night(),
            "--analyte",
            "PT",
            "--collected",
            "22:10",
            "--waited",
            "5 h"
        );
        var day = await Ask(
            new Night(),
            "--analyte",
            "PT",
            "--collected",
            "22:10",
            "--as-of",
            "2040-01-01"
        );
        var alone = await Ask(new Night(), "--collected", "22:10");

        Assert.All([both, day, alone], run => Assert.Equal(ExitCode.WrongUsage, run.Code));
    }

    [Fact]
    public async Task A_system_is_taken_by_the_letter()
    {
        var run = await Ask(
            TimeProvider.System,
            "--analyte",
            "pt",
            "--group",
            "none",
            "--waited",
            "1 h",
            "--strict"
        );

        Assert.StartsWith(
            "ASK THE DIRECTOR: no report in the register that counts has a rule for \"pt\"",
            run.Out,
            Comparison
        );
    }

    /// <summary>Five past three in the morning, a day after the register was signed.</summary>
    private sealed class Night : TimeProvider
    {
        private static readonly DateTimeOffset s_now = new DateTimeOffset(
            System.GetUtcNow().UtcDateTime.Date,
            TimeSpan.Zero
        )
            .AddDays(2)
            .Add(new TimeSpan(3, 5, 0));

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => s_now;

        public static string Day(string text) =>
            text.Replace("DAY-BEFORE", Written(-1), Comparison)
                .Replace("DAY", Written(0), Comparison);

        private static string Written(int days) =>
            s_now.AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }
}
