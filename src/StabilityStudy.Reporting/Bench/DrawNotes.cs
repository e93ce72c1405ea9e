using StabilityStudy.Core.Bench;

namespace StabilityStudy.Reporting.Bench;

/// <summary>The words above and below the draw sheet.</summary>
/// <param name="study">The study.</param>
/// <param name="specimens">What is drawn.</param>
/// <param name="cell">The cell in which the groups are named.</param>
internal sealed class DrawNotes(
    BenchStudy study,
    ImmutableArray<BenchSpecimen> specimens,
    DrawnSpecimenCell cell
)
{
    /// <summary>Whether a letter means the same time, and the spare has the same one, in every specimen.</summary>
    private bool IsAlike =>
        specimens.Select(specimen => specimen.Tubes.Length).Distinct().Count() == 1;

    private BenchSpecimen Longest =>
        specimens.MaxBy(specimen => specimen.Tubes.Length) ?? specimens[0];

    private ImmutableArray<BenchTube> Delayed =>
        [
            .. Longest.Tubes.Where(tube =>
                tube.Storage is { } storage && !RunListPlan.IsFrozen(storage)
            ),
        ];

    /// <summary>What is to be known first.</summary>
    public ImmutableArray<(string Text, bool IsStrong)> Opening
    {
        get
        {
            var (origin, verb) = study.IsThawing
                ? ("time of thawing", "thawed")
                : ("collection time", "collected");
            var example = Delayed is [var first, ..]
                ? $"{verb} 07:05, {Example(first.Earliest)}"
                : $"{verb} 07:05, {Example(study.Protocol.BaselineWithin)}";
            return
            [
                ($"Write the {origin} first.", true),
                (
                    $"Times below count from it: {example}. Stay between the two times; never test early. Past the later time: test at once, write the time, and say so in the study notes.",
                    false
                ),
            ];
        }
    }

    /// <summary>The notes below the table.</summary>
    public ImmutableArray<ImmutableArray<(string Text, bool IsStrong)>> All() =>
        [AtTheDraw(), AtTheAnalyzer(), Never()];

    private static string Example(TimeSpan offset)
    {
        var (hours, minutes) = ((int)offset.TotalHours + 7, offset.Minutes + 5);
        (hours, minutes) = (hours + (minutes / 60), minutes % 60);
        var day = (hours / 24) switch
        {
            0 => "",
            1 => " the next day",
            var days => string.Create(CultureInfo.InvariantCulture, $" {days} days later"),
        };
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{BenchWords.Offset(offset)} is {hours % 24:00}:{minutes:00}{day}"
        );
    }

    private ImmutableArray<(string Text, bool IsStrong)> AtTheDraw()
    {
        var protocol = study.Protocol;
        var hasSpare = Longest.Spare is not null;
        var letter = IsAlike ? Longest.Spare?.Letter : null;
        var keys = BenchWords.Keys(
            specimens.Select(specimen => specimen.Group),
            specimens.Min(specimen => cell.NameWidth(specimen.Code)),
            DrawnSpecimenCell.NameLines
        );
        string[] faults =
        [
            .. protocol.Eligibility.FillPercentMinimum is { } least
                ? [string.Create(CultureInfo.InvariantCulture, $"filled below {least:0.##} %")]
                : Array.Empty<string>(),
            .. protocol.Eligibility.RejectClot ? ["clotted at the draw"] : Array.Empty<string>(),
        ];
        var unfit =
            faults.Length == 0
                ? "A tube that cannot be used is not tested"
                : $"A tube {string.Join(" or ", faults)} is not tested";
        var instead =
            !hasSpare ? ". State in the study notes the same day which tube is missing."
            : letter is null
                ? ": the spare takes its place; write the letter of the spare beside its own."
            : $": {letter} takes its place; write “{letter}” beside its letter.";
        var assigned =
            (
                protocol.DelaysPerSpecimen is { } some
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $" Each specimen is tested at {some} of the later times: strike out the others."
                    )
                    : ""
            )
            + (
                protocol.Storages.Length > 1
                    ? " A specimen that does not wait in every storage: strike out the rows of the others."
                    : ""
            );
        if (!study.IsDrawn)
        {
            return
            [
                (study.IsThawing ? "Thaw" : "At the draw:", true),
                (
                    (
                        study.IsThawing
                            ? "each portion once; never freeze it again."
                            : char.ToLowerInvariant(unfit[0])
                                + unfit[1..]
                                + ". State in the study notes the same day which specimen is missing."
                                + PlannedHandling.AtTheDraw(protocol)
                    )
                        + assigned
                        + keys,
                    false
                ),
            ];
        }

        return
        [
            ("Draw", true),
            (
                $"in the order 1st to {BenchWords.Ordinal(Longest.Tubes.Length)}{(!hasSpare ? "" : letter is null ? ", spare last" : $", spare {letter} last")}. {unfit}{instead}{PlannedHandling.AtTheDraw(protocol)}{assigned}{keys}",
                false
            ),
        ];
    }

    private ImmutableArray<(string Text, bool IsStrong)> AtTheAnalyzer() =>
        [
            ("Run order:", true),
            (
                "of the tubes ready together, lowest number first. Hemolysis: 0 none, 1 slight, 2 moderate, 3 gross; circle one. Clot or no result after waiting: note it, keep the row.",
                false
            ),
            ("It counts.", true),
            .. study.IsThawing
            || PlannedHandling.AtTheCentrifuge(study.Protocol) is not { Length: > 0 } spin
                ? ImmutableArray<(string, bool)>.Empty
                : [(spin.TrimStart(), false)],
        ];

    private ImmutableArray<(string Text, bool IsStrong)> Never()
    {
        var late = Delayed
            .Where(tube => tube.Spin.Moment == SpinMoment.Late)
            .Select(tube => tube.Letter)
            .ToImmutableArray();
        if (!late.IsEmpty)
        {
            var which = (IsAlike, Longest.Spare) switch
            {
                (true, { } spare) =>
                    $"{BenchWords.Letters(late)} (or {spare.Letter} in their place)",
                (true, null) => BenchWords.Letters(late),
                (false, { }) => "a tube that waits (or a spare in its place)",
                (false, null) => "a tube that waits",
            };

            // Common practice: cold changes the clotting times of whole blood.
            var cold = study.Protocol.Storages.All(storage => storage.LowestCelsius >= 10)
                ? " Never on ice or in the refrigerator."
                : "";
            return
            [
                ("Never", true),
                (
                    $"spin {which} on arrival: a spun tube no longer waits as whole blood.{cold}{SpinBaseline()}{Travel()}",
                    false
                ),
            ];
        }

        return study.Protocol.TubePlan switch
        {
            TubePlan.OneTubeRetested =>
            [
                ("One tube:", true),
                (
                    $"A is tested again at each time; it is never spun again.{SpinBaseline()}{Travel()}",
                    false
                ),
            ],
            TubePlan.Aliquots =>
            [
                ("One portion a time:", true),
                (
                    $"a portion that was opened or thawed does not wait again.{SpinBaseline()}{Travel()}",
                    false
                ),
            ],
            _ =>
            [
                ("Keep", true),
                (
                    $"at {string.Join("; ", study.Protocol.Storages.Select(storage => $"{BenchWords.Range(storage)} °C"))}.{SpinBaseline()}{Travel()}",
                    false
                ),
            ],
        };
    }

    private string SpinBaseline() =>
        string.Concat(
            study.IsThawing
                ? []
                : specimens
                    .Select(specimen => specimen.Group)
                    .Distinct()
                    .Where(group => group.BaselineSpunWithin is not null)
                    .Select(group =>
                        $" {group.Name}: spin A within {DurationText.Format(group.BaselineSpunWithin ?? default)}."
                    )
        );

    private string Travel() =>
        (study.IsThawing ? "" : PlannedHandling.OnTheWay(study.Protocol))
        + string.Concat(
            study
                .Protocol.Storages.Where(storage => storage.Transport is not null)
                .Select(storage => $" On the way: {storage.Transport}.")
        );
}
