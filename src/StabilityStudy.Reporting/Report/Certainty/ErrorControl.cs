namespace StabilityStudy.Reporting.Report.Certainty;

/// <summary>How often a wrong "supported" is to be expected, and over what.</summary>
internal static class ErrorControl
{
    /// <summary>The statement for this study's criteria and number of sequences.</summary>
    public static string Of(StudyAnalysis analysis)
    {
        const string order =
            "Time points are concluded in order, each at its full level, and the sequence stops at the first that is not supported. It is assumed that change does not reverse between time points.";
        var chances = analysis
            .Protocol.Criteria.Select(ChanceOf)
            .OfType<double>()
            .DefaultIfEmpty(0)
            .ToArray();
        if (chances.Max() == 0)
        {
            return $"{order} No criterion controls the chance of a wrong \"supported\".";
        }

        var without = analysis
            .Protocol.Criteria.Where(criterion => ChanceOf(criterion) is null)
            .Select(criterion => criterion.Id)
            .ToArray();
        if (without.Length > 0)
        {
            return $"{order} Criterion {string.Join(" and ", without)} holds an estimate alone to its limit: with the truth exactly at that limit about every second study would meet it, so the chance of a wrong \"supported\" is not controlled.";
        }

        var each = chances.Max() * analysis.Protocol.PlannedLooks;
        var sequences = analysis.Sequences.Sum(sequence => Math.Max(1, sequence.Parts.Length));
        var all =
            sequences > 1
                ? $" It holds for each sequence (analyte, patient group, storage{(sequences > analysis.Sequences.Length ? ", instrument" : "")}), not over all of them: with the {NumberText.Count(sequences)} sequences of this study, independent and each exactly at a limit, the chance of at least one wrong \"supported\" would at worst be 1 − {NumberText.Plain((decimal)(1 - each))}{NumberText.Superscript(sequences)}, about {NumberText.Fixed(100 * (1 - Math.Pow(1 - each, sequences)), 0)} %."
                : " The study has one sequence (analyte, patient group, storage); over several the chance would add up.";
        var looks =
            analysis.Protocol.PlannedLooks > 1
                ? " The protocol planned two looks at the data, one when the planned specimens were in and one after an extension; the chance counts both."
                : "";
        return $"{order}{looks} The chance of a wrong \"supported\" in a sequence is then about {NumberText.Percent(each)} or less as far as simulations show (METHODS.md): collection days must be independent of each other, and the specimens such as patients of the group bring. A large change of one specimen in twenty can go unseen among 40 or fewer, and a long tail beyond the limit among fewer than 20; a criterion on the mean alone then errs more often.{all}";
    }

    /// <summary>
    /// The chance that a criterion is met although the truth lies at its limit; null without error control. A two-sided
    /// interval errs on one side only, where the limit is.
    /// </summary>
    private static double? ChanceOf(Criterion criterion) =>
        criterion.IsEstimateAlone
            ? null
            : Math.Round((1 - criterion.ConfidenceLevel) / (criterion.JudgesMean ? 2 : 1), 6);
}
