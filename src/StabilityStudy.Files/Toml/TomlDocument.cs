using System.Buffers;
using System.Text;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace StabilityStudy.Files.Toml;

/// <summary>Reads TOML bytes into values that know their lines. A key given twice is a query, wherever TOML allows none.</summary>
internal static class TomlDocument
{
    // TOML 1.0: control characters other than tab and the ends of lines are allowed nowhere.
    private static readonly SearchValues<byte> Controls = SearchValues.Create([
        .. Enumerable
            .Range(0, 0x20)
            .Append(0x7F)
            .Where(code => code is not ('\t' or '\n' or '\r'))
            .Select(code => (byte)code),
    ]);

    /// <summary>Reads a file; null when its text breaks the rules of TOML, with a query for each place.</summary>
    public static TomlEntries? Read(ReadOnlyMemory<byte> utf8, string fileName, QueryList queries)
    {
        var bytes = Utf8Text.WithoutMark(utf8).Span;
        if (bytes.Length > StudyLimits.TomlBytes)
        {
            FileQueries.AddTooLarge(queries, fileName, StudyLimits.TomlBytes);
            return null;
        }

        if (!Utf8Text.IsValid(bytes))
        {
            queries.Add(
                FileQueries.NotUtf8,
                new QuerySource(fileName, Utf8Text.FirstInvalidLine(bytes), null),
                "",
                "This line is not UTF-8 text."
            );
            return null;
        }

        if (bytes.IndexOfAny(Controls) is >= 0 and var place)
        {
            queries.Add(
                FileQueries.TomlSyntax,
                new QuerySource(fileName, bytes[..place].Count((byte)'\n') + 1, null),
                "",
                $"The line holds a character that cannot be seen and that TOML does not allow: {UnseenCharacters.NameOf(new Rune(bytes[place]))}."
            );
            return null;
        }

        if (Parsed(Utf8Text.Decode(bytes), fileName, queries) is not { } document)
        {
            return null;
        }

        if (document.HasErrors)
        {
            foreach (
                var diagnostic in document
                    .Diagnostics.OrderBy(found => found.Span.Start.Offset)
                    .DistinctBy(found => found.Span.Start.Line)
            )
            {
                queries.Add(
                    FileQueries.TomlSyntax,
                    new QuerySource(fileName, LineOf(diagnostic.Span), null),
                    "",
                    FormattableString.Invariant(
                        $"The line breaks the rules of TOML near character {diagnostic.Span.Start.Column + 1}: {OneLine(diagnostic.Message)}."
                    )
                );
            }

            return null;
        }

        return new Builder(fileName, queries).Build(document);
    }

    /// <summary>The tree of the file; null, with a query, where tables and lists lie deeper in each other than the parser goes, or the file ends within an escape.</summary>
    private static DocumentSyntax? Parsed(string text, string fileName, QueryList queries)
    {
        try
        {
            return SyntaxParser.Parse(text, fileName, validate: false);
        }
        catch (TomlException error)
        {
            queries.Add(
                FileQueries.TomlSyntax,
                new QuerySource(fileName, error.Line is { } line ? line + 1 : null, null),
                "",
                "Lists and tables in braces lie too deep in each other."
            );
            return null;
        }
        catch (ArgumentOutOfRangeException)
        {
            // What the parser makes of a file that ends within an escape.
            queries.Add(
                FileQueries.TomlSyntax,
                new QuerySource(fileName, text.AsSpan().Count('\n') + 1, null),
                "",
                "The file ends within a text, after a backslash."
            );
            return null;
        }
    }

    private static int LineOf(SourceSpan span) => span.Start.Line + 1;

    private static string OneLine(string text) =>
        string.Join(' ', text.Split(['\r', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries))
            .TrimEnd('.');

    private sealed class Builder(string fileName, QueryList queries)
    {
        public TomlEntries Build(DocumentSyntax document)
        {
            var root = new TomlDraft(1, isClosed: false);
            foreach (var pair in document.KeyValues)
            {
                Add(root, pair);
            }

            foreach (var table in document.Tables)
            {
                if (
                    table.Name is { } name
                    && Header(root, name, table is TableArraySyntax) is { } draft
                )
                {
                    foreach (var pair in table.Items)
                    {
                        Add(draft, pair);
                    }
                }
            }

            return root.Finish();
        }

        private TomlDraft? Header(TomlDraft root, KeySyntax name, bool isList)
        {
            if (KeysOf(name) is not { } keys)
            {
                return null;
            }

            var line = LineOf(name.Span);
            var parent = Descend(root, keys, line);
            var draft = isList ? parent?.Append(keys[^1], line) : parent?.Open(keys[^1], line);
            if (draft is null || (!isList && draft.HasHeader))
            {
                Duplicate(string.Join('.', keys), line, parent?.LineOf(keys[^1]));
                return draft;
            }

            draft.HasHeader = true;
            return draft;
        }

        private void Add(TomlDraft table, KeyValueSyntax pair)
        {
            if (pair.Key is not { } name || pair.Value is not { } value)
            {
                return;
            }

            if (KeysOf(name) is not { } keys)
            {
                return;
            }

            var line = LineOf(name.Span);
            var parent = Descend(table, keys, line);
            if (parent is null || parent.LineOf(keys[^1]) is not null)
            {
                Duplicate(string.Join('.', keys), line, parent?.LineOf(keys[^1]));
                return;
            }

            parent.Put(keys[^1], line, Convert(value));
        }

        private static TomlDraft? Descend(TomlDraft table, ImmutableArray<string> keys, int line)
        {
            TomlDraft? current = table;
            foreach (var key in keys[..^1])
            {
                current = current?.Open(key, line);
            }

            return current;
        }

        private TomlValue Convert(ValueSyntax value)
        {
            var line = LineOf(value.Span);
            var text = value.ToString() ?? "";
            switch (value)
            {
                case StringValueSyntax s:
                    return new TomlText(line, text, s.Value ?? "");
                case IntegerValueSyntax or FloatValueSyntax:
                    return new TomlNumber(line, text.Trim());
                case BooleanValueSyntax b:
                    return new TomlFlag(line, text, b.Value);
                case ArraySyntax list:
                    return new TomlList(
                        line,
                        text,
                        [
                            .. list
                                .Items.Where(item => item.Value is not null)
                                .Select(item => Convert(item.Value!)),
                        ]
                    );
                case InlineTableSyntax braces:
                    var draft = new TomlDraft(line, isClosed: true);
                    foreach (var item in braces.Items)
                    {
                        if (item.KeyValue is { } pair)
                        {
                            Add(draft, pair);
                        }
                    }

                    return draft.Finish();
                default:
                    return new TomlMoment(line, text.Trim());
            }
        }

        private void Duplicate(string key, int line, int? firstLine) =>
            queries.Add(
                FileQueries.DuplicateKey,
                new QuerySource(fileName, line, key),
                key,
                firstLine is { } first
                    ? FormattableString.Invariant(
                        $"The key \"{key}\" is already given on line {first}."
                    )
                    : $"The key \"{key}\" adds to something that is already given as a whole."
            );

        /// <summary>The parts of a key; null, with a query, for more than any key has.</summary>
        private ImmutableArray<string>? KeysOf(KeySyntax name)
        {
            if (name.DotKeys.ChildrenCount < StudyLimits.KeyParts)
            {
                return [TextOf(name.Key), .. name.DotKeys.Select(dotted => TextOf(dotted.Key))];
            }

            queries.Add(
                FileQueries.TomlSyntax,
                new QuerySource(fileName, LineOf(name.Span), null),
                "",
                FormattableString.Invariant(
                    $"The key has more than {StudyLimits.KeyParts} parts between points."
                )
            );
            return null;
        }

        private static string TextOf(BareKeyOrStringValueSyntax? key) =>
            key switch
            {
                BareKeySyntax bare => bare.Key?.Text ?? "",
                StringValueSyntax quoted => quoted.Value ?? "",
                _ => "",
            };
    }
}
