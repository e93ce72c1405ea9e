namespace StabilityStudy.Files.Csv;

/// <summary>The ways in which fields of data files are written.</summary>
internal static class ColumnForms
{
    /// <summary>A code or short text.</summary>
    public static readonly ColumnForm<string> Text = Texts(
        "a text",
        (row, column, _) => WithoutAddress(row, column, row.Field(column))
    );

    /// <summary>A text in any words; line breaks become line feeds.</summary>
    public static readonly ColumnForm<string> FreeText = Texts("any text", ReadFreeText) with
    {
        IsFreeText = true,
    };

    /// <summary>A result as reported; what it means depends on its analyte.</summary>
    public static readonly ColumnForm<string> Result = Text.Of(
        $"a number; <n or >n; a word of the protocol's categories; {string.Join(", ", FileWords.MissingReasons.Words.Where(word => word.Length > 0))}, or empty"
    ) with
    {
        Content = ColumnContent.Results,
    };

    /// <summary>A code of a person, specimen or tube, which must not tell who the person is.</summary>
    public static readonly ColumnForm<string> StudyCode = Texts(
        "a code that tells nothing about a person",
        (row, column, _) =>
        {
            var code = row.Field(column);
            if (IsInExponent(code))
            {
                row.Add(
                    RowQueries.CodeInExponent,
                    column,
                    code,
                    $"\"{code}\" is a number with an exponent: a spreadsheet writes long numbers so, and loses digits."
                );
            }
            else if (IdentityShape.Of(code) is { } shape)
            {
                var canBeDeclared = IdentityShape.CanBeDeclared(shape);
                if (!canBeDeclared || !row.Known.CodesAreDeclared)
                {
                    row.Add(
                        RowQueries.LooksLikeIdentity,
                        column,
                        "",
                        $"The code looks like {shape}; it is not repeated here.",
                        canBeDeclared
                            ? "Replace it by a study code that says nothing about the person. Where these numbers were made for this study alone and lead to nobody, somebody declares that as codes_declared in study.toml."
                            : null
                    );
                }
            }

            return code;
        }
    ) with
    {
        IsOfPersons = true,
    };

    /// <summary>A time.</summary>
    public static readonly ColumnForm<DateTimeOffset?> OptionalTime = new(
        FormattableString.Invariant($"a time, from the year {LocalTimes.EarliestYear} on"),
        ColumnContent.Times,
        null,
        ReadTime,
        (line, time) => line.Time(time)
    )
    {
        IsOwnToRow = true,
    };

    /// <summary>A time that every row needs.</summary>
    public static readonly ColumnForm<DateTimeOffset> Time = new(
        OptionalTime.Allowed,
        ColumnContent.Times,
        default,
        (row, column, text) => ReadTime(row, column, text) ?? default,
        (line, time) => line.Time(time)
    )
    {
        IsOwnToRow = true,
    };

    /// <summary>The baseline or a planned delay.</summary>
    public static readonly ColumnForm<TestOccasion> Occasion = new(
        $"\"{TestOccasion.BaselineWord}\" or a time point of the protocol",
        ColumnContent.Words,
        default,
        (row, column, _) => ReadOccasion(row, column, row.Field(column)),
        (line, occasion) => line.Occasion(occasion)
    );

    /// <summary>A number; null when not recorded.</summary>
    public static ColumnForm<decimal?> Number(NumberRange range) =>
        new(
            range.Words,
            ColumnContent.Numbers,
            null,
            (row, column, text) => ReadNumber(row, column, text, range),
            (line, number) => line.Number(number)
        );

    /// <summary>A whole number; null when not recorded.</summary>
    public static ColumnForm<int?> Whole(NumberRange range) =>
        new(
            range.Words,
            ColumnContent.WholeNumbers,
            null,
            (row, column, text) =>
                ReadWhole(text, range)
                ?? (
                    ReadNumber(row, column, text, range) is { } number
                        ? decimal.ToInt32(number)
                        : null
                ),
            (line, number) => line.Whole(number)
        );

    /// <summary>One of the words of a set, in which the empty one has a meaning too.</summary>
    public static ColumnForm<T> Word<T>(WordSet<T> words)
        where T : struct =>
        new(
            string.Join(" | ", words.Words.Where(word => word.Length > 0).Select(w => $"\"{w}\"")),
            ColumnContent.Words,
            default,
            (row, column, text) => ReadWord(row, column, text, words),
            (line, value) => line.Text(words.Write(value))
        );

    /// <summary>A code that must be one of those known.</summary>
    /// <param name="allowed">What it names, in words.</param>
    /// <param name="codes">Those known.</param>
    public static ColumnForm<string> Known(string allowed, Func<KnownCodes, CodeSet> codes) =>
        Texts(allowed, (row, column, _) => ReadKnown(row, column, codes(row.Known)));

    private static bool IsInExponent(string code) =>
        code.Contains("E+", StringComparison.OrdinalIgnoreCase)
        && double.TryParse(
            code.Replace(',', '.'),
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out _
        );

    private static ColumnForm<string> Texts(string allowed, ReadField<string> read) =>
        new(allowed, ColumnContent.Words, "", read, (line, text) => line.Text(text));

    private static string WithoutAddress(CsvRow row, Column column, string text)
    {
        if (IdentityShape.In(text) is not { } found)
        {
            return text;
        }

        row.Add(
            RowQueries.LooksLikeIdentity,
            column,
            "",
            $"The text holds what looks like {found}; it is not repeated here.",
            "Take it out."
        );
        return "";
    }

    private static string ReadFreeText(CsvRow row, Column column, ReadOnlySpan<char> _)
    {
        var field = row.Field(column);
        if (FormulaShape.Is(field))
        {
            FormulaShape.Report(row, column, field);
            return "";
        }

        if (UnseenCharacters.First(field) is null)
        {
            return WithoutAddress(row, column, field);
        }

        var text = field.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        if (
            UnseenCharacters.First(
                text.Replace("\n", "", StringComparison.Ordinal)
                    .Replace("\t", "", StringComparison.Ordinal)
            )
            is not { } unseen
        )
        {
            return WithoutAddress(row, column, text);
        }

        row.Add(
            FileQueries.ControlCharacter,
            column,
            "",
            $"The text holds a character that cannot be seen: {UnseenCharacters.NameOf(unseen)}."
        );
        return "";
    }

    private static DateTimeOffset? ReadTime(CsvRow row, Column column, ReadOnlySpan<char> text)
    {
        var (time, fault) = row.Known.Times.Read(text);
        if (fault is { } found)
        {
            row.Add(
                found.Kind,
                column,
                text.ToString(),
                found.Message,
                row.DateFormat is { } format && found.Kind == RowQueries.NotATime
                    ? $"Write it as the others, by date_format = \"{format}\" of study.toml, or correct date_format."
                    : found.Action
            );
        }

        // Without the zone of an unreadable study.toml the time is not wrong, but the row cannot be used.
        if (time is null)
        {
            row.LeaveOut();
        }

        return time;
    }

    private static TestOccasion ReadOccasion(CsvRow row, Column column, string text)
    {
        var planned = row.Known.TimePoints;
        if (row.Known.OccasionByWord.TryGetValue(text, out var occasion))
        {
            return occasion;
        }

        if (DurationText.TryParse(text, out var delay))
        {
            var point = new TimePoint(delay);
            if (planned is null || planned.Value.Contains(point))
            {
                return new TestOccasion(point);
            }
        }
        else if (planned is null)
        {
            return default;
        }

        var words = (planned ?? [])
            .Select(point => point.ToString())
            .Prepend(TestOccasion.BaselineWord);
        row.Add(
            RowQueries.UnknownTimePoint,
            column,
            text,
            $"\"{text}\" is not planned in the protocol.{NearestWord.Question(text, words)}",
            $"Write one of {string.Join(", ", words.Select(word => $"\"{word}\""))}."
        );
        return default;
    }

    // The lines of a million rows are whole numbers.
    private static int? ReadWhole(ReadOnlySpan<char> text, NumberRange range) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && range.Holds(number)
            ? number
            : null;

    private static decimal? ReadNumber(
        CsvRow row,
        Column column,
        ReadOnlySpan<char> text,
        NumberRange range
    )
    {
        if (StrictNumber.Read(text, out var number) is { } advice)
        {
            row.Add(
                FileQueries.NotANumber,
                column,
                text.ToString(),
                $"\"{text}\" is not a plain decimal number.",
                char.ToUpperInvariant(advice[0]) + advice[1..] + "."
            );
            return null;
        }

        if (range.Holds(number))
        {
            return number;
        }

        row.Add(
            FileQueries.OutOfRange,
            column,
            text.ToString(),
            $"\"{column.Name}\" must be {range.Words}."
        );
        return null;
    }

    private static T ReadWord<T>(
        CsvRow row,
        Column column,
        ReadOnlySpan<char> text,
        WordSet<T> words
    )
        where T : struct
    {
        if (words.TryRead(text, out var value))
        {
            return value.Value;
        }

        var read = text.ToString();
        row.Add(
            FileQueries.UnknownWord,
            column,
            read,
            $"\"{read}\" is not known here.{NearestWord.Question(read, words.Words)}",
            $"Write one of {words.Listed}."
        );
        return default;
    }

    private static string ReadKnown(CsvRow row, Column column, CodeSet known)
    {
        var code = row.Field(column);
        if (!known.Holds(code) && column.IsOfPersons && IdentityShape.Of(code) is { } shape)
        {
            row.Add(
                RowQueries.LooksLikeIdentity,
                column,
                "",
                $"The code looks like {shape}, and there is no such {known.What} in {known.Where}; it is not repeated here.",
                $"Write the code of a {known.What} of {known.Where}, or map it under values."
            );
        }
        else if (!known.Holds(code))
        {
            row.Add(
                ProtocolQueries.UnknownReference,
                column,
                code,
                $"There is no {known.What} \"{code}\" in {known.Where}.{known.Question(code)}",
                $"Correct the code, or add it to {known.Where}."
            );
        }

        return code;
    }
}
