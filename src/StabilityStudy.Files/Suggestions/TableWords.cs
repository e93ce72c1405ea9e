using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>Recognizes what a table holds by its words: the names of its columns, and what stands in them.</summary>
/// <param name="study">What is known of the study.</param>
internal sealed class TableWords(Surroundings study)
{
    /// <summary>Whether a table of results has a pair in each row, with its collection time.</summary>
    public bool IsOfPairs(DeliveredTable table)
    {
        var draft = new SectionDraft(KindOfTable.Pairs, table, new(null), []);
        return PairsDraft.Fits(draft, WideColumns.Find(draft, study));
    }

    /// <summary>What a table holds; null where nothing shows it.</summary>
    public KindOfTable? KindOf(DeliveredTable table)
    {
        var draft = new SectionDraft(KindOfTable.Results, table, new(null), []);
        return KindOfTable.Of(draft.Profiles, !WideColumns.Find(draft, study).IsEmpty);
    }

    /// <summary>Whether a text is a header: of names, words of persons, times, time points or analytes.</summary>
    public bool IsName(string text) =>
        HeaderWords.ColumnOf(text) is not null
        || HeaderWords.EventOf(text) is not null
        || PersonalHeaders.Of(text) is not null
        || KindOfTable.All.Any(kind => kind.Columns.Names.Contains(text))
        || (!text.Any(char.IsAsciiDigit) && !TradeValues.AnalytesOf(text, study.Analytes).IsEmpty)
        || (
            PlainWords.Of(text).Length > 2
            && TradeValues.OccasionIn(text, study.TimePoints) is not null
        );
}
