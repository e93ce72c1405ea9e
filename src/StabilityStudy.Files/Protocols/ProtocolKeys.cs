using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Protocols;

/// <summary>The keys at the top of protocol.toml.</summary>
internal static class ProtocolKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<int> Format = FormatNumber.Declare(Table);
    public static readonly Key<string> Code = Table.Add("code", Required, StudyCode(longest: 60), "study code; names files and stands on every page", "\"WB-RT-12\"");
    public static readonly Key<string> Version = Table.Add("version", Required, Text, "version of the protocol", "\"2\"");
    public static readonly Key<ImmutableArray<TimeSpan>> TimePoints = Table.Add("time_points", Required, Durations, "planned delays since collection, ascending", "[\"6 h\", \"8 h\"]");
    public static readonly TableKey Tolerance = Table.AddTable("tolerance", Required, ToleranceKeys.Table, "how far an actual delay may lie from the planned one", "{ early = \"0 min\", late = \"30 min\" }");
    public static readonly Key<TimeSpan> BaselineWithin = Table.Add("baseline_within", Required, Duration, "longest time from collection to the baseline test", "\"1 h\"");
    public static readonly Key<ChangeOrigin> ChangeSince = Table.Add("change_since", Optional, Word(FileWords.ChangeOrigins).Or(ChangeOrigin.Collection), "from when a change is counted: from collection, each specimen's value then being computed from its own baseline delay, or from the baseline, and the claim says so; from collection when not given", "\"collection\"");
    public static readonly Key<TimeOrigin> TimeCountsFrom = Table.Add("time_counts_from", Optional, Word(FileWords.TimeOrigins).Or(TimeOrigin.Collection), "what planned delays, baseline_within and windows count from: collection, or for plasma kept after thawing the thawing of each portion (thawed_at), with change_since = \"baseline\"; collection when not given", "\"thawing\"");
    public static readonly Key<TubePlan> TubePlan = Table.Add("tube_plan", Required, Word(FileWords.TubePlans), "from what each result of a specimen is taken", "\"a tube per time point\"");
    public static readonly Key<int> Replicates = Table.Add("replicates", Optional, Whole(1, 2).Or(1), "results per tube that are averaged; 1 when not given", "1");
    public static readonly Key<int> MinimumDays = Table.Add("minimum_days", Required, Whole(2, 366), "fewest collection days, and runs of either kind, on which a criterion can be met", "5");
    public static readonly Key<int?> PlannedDays = Table.Add("planned_days", Optional, Whole(2, 366).OrNone(), "days on which specimens are to be collected, each with runs of its own, for planning", "10");
    public static readonly Key<TimeSpan> WindowStep = Table.Add("window_step", Required, Duration, "a window is rounded down to this step", "\"30 min\"");
    public static readonly Key<decimal> LeftOutPercentMaximum = Table.Add("left_out_percent_max", Optional, Number(NumberRange.LeftOut).Or(20), "largest share of specimens left out of a time point, percent; 20 when not given", "20");
    public static readonly Key<TimeSpan> OneRunWithin = Table.Add("one_run_within", Optional, LongDuration.Or(TimeSpan.FromHours(1)), "longest time between two tests of one run; 1 h when not given", "\"1 h\"");
    public static readonly Key<ImmutableArray<string>> RerunReasons = Table.Add("rerun_reasons", Optional, EachOnce(Texts, reason => $"The reason \"{reason}\" stands twice."), "reasons for which a test may be repeated; none when not given", "[\"instrument error\"]");
    public static readonly Key<ControlRule> Controls = Table.Add("controls", Optional, Word(FileWords.ControlRules).Or(ControlRule.EveryRun), "where control results are; in every run when not given", "\"every run\"");
    public static readonly Key<RepeatDraws> RepeatDraws = Table.Add("repeat_draws", Optional, Word(FileWords.RepeatDrawRules).Or(Core.Protocol.RepeatDraws.LeftOut), "a second specimen of a person; left out when not given", "\"left out\"");
    public static readonly Key<int?> DelaysPerSpecimen = Table.Add("delays_per_specimen", Optional, Whole(1, 100).OrNone(), "how many time points each specimen is tested at; all when not given", "2");
    public static readonly Key<ImmutableArray<string>> Instruments = Table.Add("instruments", Optional, EachOnce(Texts, instrument => $"The instrument \"{instrument}\" stands twice."), "codes of the instruments of a study over several: the planned number of specimens of a group then holds for each of them, and each is concluded by itself; specimens on others are not counted. An amendment that brings them in adds no places", "[\"AN1\", \"AN2\"]");
    public static readonly Key<int> Looks = Table.Add("looks", Optional, Whole(1, 2).Or(1), "2 where an extension is planned: the data are looked at when the planned specimens are in, and once more after the extension, whose larger number is locked before its specimens are collected; confidence is then at least 0.95 for means and 0.975 for shares; 1 when not given", "1");
    public static readonly Key<TimeSpan?> ReviewAfter = Table.Add("review_after", Optional, LongDuration.OrNone(), "how long after it came into force a window is to be reviewed; the decision states the day, and may state another. ISO Guide 35:2017, 8.10.2.3.3, has for reference materials multiples of the length of the study; none when not given", "\"730 d\"");
    public static readonly TableKey Repeat = Table.AddTable("repeat", Optional, RepeatKeys.Table, "the signed study that this one repeats, as start --repeat writes it; it documents, and nothing is concluded from it", $"{{ report = \"WB-RT-12-3f09c2d4\", digest = {RepeatKeys.Digest.Example}, tier = \"reduced\", reason = \"new lot R-2602\" }}");
    public static readonly TableKey Signatories = Table.AddTables("signatories", Required, SignatoryKeys.Table, "who signs, in order", "[{ role = \"author\", meaning = \"ran this study\" }]");
    public static readonly TableKey Storages = Table.AddTables("storage", Required, StorageKeys.Table, "states in which tubes wait", "[{ id = \"wb-rt\", state = \"whole blood\", cap = \"closed\", celsius = [18, 25], spin_to_test = \"1 h\" }]");
    public static readonly TableKey Groups = Table.AddTables("group", Required, GroupKeys.Table, "patient groups", "[{ id = \"none\", name = \"No anticoagulant\", specimens = 40 }]");
    public static readonly TableKey Eligibility = Table.AddTable("eligibility", Required, EligibilityKeys.Table, "which specimens may be used", "{ fill_percent_min = 90, hematocrit_percent_max = 55, clot = \"reject\", source = \"common practice\" }");
    public static readonly TableKey Draw = Table.AddTable("draw", Optional, DrawKeys.Table, "how specimens are drawn and brought to the laboratory; specimens.csv then records it for each tube", "{ tube = \"2.7 mL, plastic\", citrate_percent = 3.2, discard_tube = \"before a winged set\", order = \"first, or after a blood culture\", inversions = [3, 5], source = \"common practice\" }");
    public static readonly TableKey Spin = Table.AddTable("spin", Optional, SpinKeys.Table, "how tubes are spun", "{ relative_force = 1500, duration = \"15 min\", platelets_below = 10, source = \"common practice\" }");
    public static readonly TableKey Freezing = Table.AddTable("freezing", Optional, FreezingKeys.Table, "how plasma is frozen and thawed", "{ within = \"4 h\", thaw_celsius = [36, 38], thaw_for = \"5 min\", test_within = \"1 h\", source = \"common practice\" }");
    public static readonly TableKey Analytes = Table.AddTables("analyte", Required, AnalyteKeys.Table, "measured quantities, a [[analyte]] each", "[[analyte]]");
    public static readonly TableKey Limits = Table.AddTables("limit", Depends, LimitKeys.Table, "limits, a [[limit]] each; not needed where no criterion has limits", "[[limit]]");
    public static readonly TableKey Criteria = Table.AddTables("criterion", Required, CriterionKeys.Table, "criteria, a [[criterion]] each", "[[criterion]]");
    // csharpier-ignore-end

    /// <summary>A code that can be part of a file name.</summary>
    private static ValueForm<string> StudyCode(int longest) =>
        Text.When(
            FormattableString.Invariant(
                $"letters, digits, hyphen, underscore and point, at most {longest} characters"
            ),
            (table, key, code) =>
            {
                var unfit = code.Where(c =>
                        !char.IsAsciiLetterOrDigit(c) && c is not ('-' or '_' or '.')
                    )
                    .Distinct()
                    .ToArray();
                return (unfit.Length == 0 && !code.StartsWith('.') && code.Length <= longest)
                    || table.Refuse(
                        key,
                        ProtocolQueries.UnfitCode,
                        code,
                        unfit.Length > 0
                            ? $"The study code names files, and \"{new string(unfit)}\" is unfit for that."
                            : FormattableString.Invariant(
                                $"The study code names files: it must not begin with a point or have more than {longest} characters."
                            )
                    );
            }
        );
}

/// <summary>The keys of "tolerance".</summary>
internal static class ToleranceKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<TimeSpan> Early = Table.Add("early", Required, Duration, "before the planned delay", "\"0 min\"");
    public static readonly Key<TimeSpan> Late = Table.Add("late", Required, Duration, "after the planned delay", "\"30 min\"");
    public static readonly TableKey Later = Table.AddTables("later", Optional, LaterToleranceKeys.Table, "what holds instead of late from some planned delay on, ascending", "[{ from = \"24 h\", late = \"1 h\" }]");
    // csharpier-ignore-end
}

/// <summary>The keys of "later".</summary>
internal static class LaterToleranceKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<TimeSpan> From = Table.Add("from", Required, LongDuration, "the planned delay from which it holds", "\"24 h\"");
    public static readonly Key<TimeSpan> Late = Table.Add("late", Required, Duration, "after the planned delay", "\"1 h\"");
    // csharpier-ignore-end

    public static LaterTolerance Read(TomlTable table) => new(table.Read(From), table.Read(Late));
}

/// <summary>The keys of a signatory.</summary>
internal static class SignatoryKeys
{
    public static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly Key<string> Role = Table.Add("role", Required, Text, "part in signing", "\"author\"");
    public static readonly Key<string> Meaning = Table.Add("meaning", Required, Text, "what the signature says", "\"ran this study\"");
    // csharpier-ignore-end
}
