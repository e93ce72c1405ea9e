namespace StabilityStudy.Files.Csv;

/// <summary>Looks over a table before any row is taken apart: a row of a hundred megabytes is not split into fields first.</summary>
internal static class TableSize
{
    /// <summary>Whether the table is larger than the bounds, which is a query then.</summary>
    public static bool ReportExcess(ReadOnlySpan<byte> text, string fileName, QueryList queries)
    {
        if (text.Length > StudyLimits.TableBytes)
        {
            FileQueries.AddTooLarge(queries, fileName, StudyLimits.TableBytes);
            return true;
        }

        var line = 0;
        while (!text.IsEmpty)
        {
            var end = text.IndexOfAny((byte)'\n', (byte)'\r');
            var length = end < 0 ? text.Length : end;
            line++;
            if (length > StudyLimits.RowBytes)
            {
                queries.Add(
                    CsvQueries.RecordTooLong,
                    new QuerySource(fileName, line, null),
                    "",
                    FormattableString.Invariant(
                        $"The line has {length} bytes; the longest row allowed has {StudyLimits.RowBytes}."
                    )
                );
                return true;
            }

            if (line > StudyLimits.TableLines)
            {
                FileQueries.AddTooManyLines(queries, fileName);
                return true;
            }

            if (end < 0)
            {
                return false;
            }

            text = text[
                (text[end] == '\r' && text[(end + 1)..] is [(byte)'\n', ..] ? end + 2 : end + 1)..
            ];
        }

        return false;
    }
}
