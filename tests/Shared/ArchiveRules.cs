using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace StabilityStudy.Tests.Shared;

/// <summary>
/// Rules of PDF/A-3a (ISO 19005-3:2012) and PDF/UA-1 (ISO 14289-1:2014) that a report could break by what it shows or by being signed, checked on the objects as
/// qpdf reads them. It is no validator: what the format of the file prescribes is left to outside ones.
/// </summary>
internal sealed partial class ArchiveRules
{
    private static readonly string[] s_actions = ["/GoTo", "/URI", "/Named"];

    /// <summary>Operators that show something (ISO 32000-1:2008, Annex A).</summary>
    private static readonly HashSet<string> s_shows =
    [
        "Tj",
        "TJ",
        "Do",
        "S",
        "s",
        "f",
        "F",
        "f*",
        "B",
        "B*",
        "b",
        "b*",
        "sh",
    ];

    private static readonly string[] s_blends = ["/Normal", "/Compatible"];

    private readonly Dictionary<string, JsonElement> _objects;
    private readonly List<string> _broken = [];

    private ArchiveRules(JsonElement objects) =>
        _objects = objects.EnumerateObject().ToDictionary(item => item.Name, item => item.Value);

    /// <summary>What a file breaks; empty when it breaks nothing.</summary>
    public static async Task<IReadOnlyList<string>> BrokenBy(ReadOnlyMemory<byte> pdf)
    {
        var folder = Directory.CreateTempSubdirectory("archive-rules-");
        try
        {
            var file = Path.Combine(folder.FullName, "report.pdf");
            await File.WriteAllBytesAsync(file, pdf, TestContext.Current.CancellationToken);
            var answer = await OutsideTool.Run(
                "qpdf",
                "--json=2",
                "--json-key=qpdf",
                "--json-stream-data=inline",
                "--decode-level=generalized",
                file
            );
            Assert.Equal(("", 0), (answer.Error, answer.ExitCode));
            using var json = JsonDocument.Parse(answer.Out);
            var rules = new ArchiveRules(json.RootElement.GetProperty("qpdf")[1]);
            rules.Check();
            return rules._broken;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private void Check()
    {
        var trailer = Value(_objects["trailer"]);
        var catalog = Resolve(trailer.GetProperty("/Root"));
        Need(trailer.TryGetProperty("/ID", out _), "no file identifier (A 6.1.3)");
        Need(!trailer.TryGetProperty("/Encrypt", out _), "encrypted (A 6.1.3)");
        CheckCatalog(catalog);
        CheckMetadata(catalog);
        CheckAttachments(catalog);
        foreach (var (name, item) in _objects.Where(pair => pair.Key != "trailer"))
        {
            CheckDictionaries(name, Value(item));
            if (item.TryGetProperty("stream", out var stream))
            {
                CheckStream(name, stream.GetProperty("dict"));
            }
        }

        foreach (var page in Pages(Resolve(catalog.GetProperty("/Pages"))))
        {
            CheckPage(page);
        }
    }

    private void CheckCatalog(JsonElement catalog)
    {
        Need(Text(Of(catalog, "/Lang")) is "u:en-US", "no language (UA 7.2)");
        Need(
            Of(Of(catalog, "/MarkInfo"), "/Marked") is { ValueKind: JsonValueKind.True },
            "not marked as tagged (A 6.7.2.2, UA 7.1)"
        );
        Need(
            Of(Of(catalog, "/MarkInfo"), "/Suspects") is not { ValueKind: JsonValueKind.True },
            "suspects (UA 7.1)"
        );
        Need(
            Of(Of(catalog, "/ViewerPreferences"), "/DisplayDocTitle")
                is { ValueKind: JsonValueKind.True },
            "the title is not displayed (UA 7.1)"
        );
        Need(Of(catalog, "/StructTreeRoot") is not null, "no structure tree (A 6.7.3)");
        Need(
            Of(catalog, "/OpenAction") is not { } open || !open.TryGetProperty("/JS", out _),
            "acts when opened"
        );
        Need(Of(catalog, "/AA") is null, "additional actions (A 6.5.2)");
        Need(Of(catalog, "/OCProperties") is null, "optional content (A 6.9)");
        Need(Of(Of(catalog, "/Names"), "/JavaScript") is null, "scripts (A 6.5.1)");
        Need(
            Of(Of(catalog, "/AcroForm"), "/NeedAppearances")
                is not { ValueKind: JsonValueKind.True }
                && Of(Of(catalog, "/AcroForm"), "/XFA") is null,
            "a form without appearances (A 6.4.1)"
        );
        var intents = Of(catalog, "/OutputIntents");
        Need(
            intents is { ValueKind: JsonValueKind.Array } list
                && list.GetArrayLength() == 1
                && Text(Of(Resolve(list[0]), "/S")) == "/GTS_PDFA1"
                && Of(Resolve(list[0]), "/DestOutputProfile") is not null,
            "no output intent (A 6.2.3)"
        );
    }

    private void CheckMetadata(JsonElement catalog)
    {
        var stream = Stream(catalog.GetProperty("/Metadata"));
        Need(Of(stream.GetProperty("dict"), "/Filter") is null, "metadata filtered (A 6.6.2.1)");
        var xmp = Encoding.UTF8.GetString(Data(stream));
        foreach (
            var claim in (string[])
                [
                    "<pdfaid:part>3</pdfaid:part>",
                    "<pdfaid:conformance>A</pdfaid:conformance>",
                    "<pdfuaid:part>1</pdfuaid:part>",
                    "<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>",
                    "<dc:title>",
                ]
        )
        {
            Need(xmp.Contains(claim, StringComparison.Ordinal), "the metadata lack " + claim);
        }
    }

    private void CheckAttachments(JsonElement catalog)
    {
        var associated = Of(catalog, "/AF") is { ValueKind: JsonValueKind.Array } list
            ? list.EnumerateArray().Select(item => item.GetString()).ToHashSet()
            : [];
        var specifications = _objects
            .Where(pair => Text(Of(Value(pair.Value), "/Type")) == "/Filespec")
            .ToArray();
        foreach (var (name, item) in specifications)
        {
            var file = Value(item);
            Need(associated.Contains(name[4..]), $"{name}: not associated (A 6.8)");
            Need(
                Text(Of(file, "/AFRelationship"))
                    is "/Source"
                        or "/Data"
                        or "/Alternative"
                        or "/Supplement"
                        or "/Unspecified",
                $"{name}: no relationship (A 6.8)"
            );
            Need(
                Of(file, "/F") is not null
                    && Of(file, "/UF") is not null
                    && Of(file, "/Desc") is not null,
                $"{name}: no names or description (A 6.8, UA 7.11)"
            );
            Need(
                Of(file, "/EF") is { } embedded
                    && Text(Of(Stream(embedded.GetProperty("/F")).GetProperty("dict"), "/Subtype"))
                        is { Length: > 3 } kind
                    && kind[1..].Contains('/', StringComparison.Ordinal),
                $"{name}: no kind of content (A 6.8)"
            );
        }
    }

    private void CheckStream(string name, JsonElement dictionary)
    {
        Need(
            Of(dictionary, "/F") is null && Of(dictionary, "/FFilter") is null,
            $"{name}: a stream outside of the file (A 6.1.7.1)"
        );
        Need(
            Of(dictionary, "/Filter") is not { } filter
                || !filter.ToString().Contains("LZW", StringComparison.Ordinal),
            $"{name}: LZW (A 6.1.7.2)"
        );
        CheckDictionaries(name, dictionary);
    }

    /// <summary>Whatever its place: fonts, graphics states, annotations, actions.</summary>
    private void CheckDictionaries(string name, JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in value.EnumerateArray())
            {
                CheckDictionaries(name, item);
            }

            return;
        }

        if (value.ValueKind != JsonValueKind.Object)
        {
            return;
        }

        CheckOne(name, value);
        foreach (var entry in value.EnumerateObject())
        {
            CheckDictionaries(name, entry.Value);
        }
    }

    private void CheckOne(string name, JsonElement value)
    {
        if (Of(value, "/BM") is { } blend)
        {
            Need(s_blends.Contains(Text(blend)), $"{name}: blend mode (A 6.2.10)");
        }

        Need(Of(value, "/TR") is null && Of(value, "/HTP") is null, $"{name}: transfer (A 6.2.5)");
        Need(Text(Of(value, "/Subtype")) is not "/PS", $"{name}: PostScript (A 6.2.9)");
        Need(
            Of(value, "/OPI") is null && Of(value, "/Ref") is null,
            $"{name}: content elsewhere (A 6.2.9)"
        );
        if (
            Text(Of(value, "/S")) is { } action
            && (Of(value, "/JS") ?? Of(value, "/URI") ?? Of(value, "/D")) is not null
            && Text(Of(value, "/Type")) is null or "/Action"
        )
        {
            Need(s_actions.Contains(action), $"{name}: action {action} (A 6.5.1)");
        }

        switch (Text(Of(value, "/Type")))
        {
            case "/Font":
                CheckFont(name, value);
                break;
            case "/Annot":
                CheckAnnotation(name, value);
                break;
            case "/Sig":
                Need(
                    Of(value, "/Reference") is not { ValueKind: JsonValueKind.Array } references
                        || references
                            .EnumerateArray()
                            .All(item =>
                                Of(Resolve(item), "/DigestValue") is null
                                && Of(Resolve(item), "/DigestMethod") is null
                            ),
                    $"{name}: digests in a signature reference (A 6.1.12)"
                );
                break;
            default:
                break;
        }
    }

    private void CheckFont(string name, JsonElement font)
    {
        if (Text(Of(font, "/Subtype")) == "/Type0")
        {
            Need(Of(font, "/ToUnicode") is not null, $"{name}: no Unicode (A 6.2.11.7, UA 7.21.7)");
            Need(Text(Of(font, "/Encoding")) == "/Identity-H", $"{name}: encoding (A 6.2.11.3)");
            return;
        }

        Need(Text(Of(font, "/Subtype")) is "/CIDFontType2", $"{name}: another kind of font");
        var descriptor = Of(font, "/FontDescriptor");
        Need(
            Of(descriptor, "/FontFile2") is not null,
            $"{name}: not embedded (A 6.2.11.4, UA 7.21.4)"
        );
        Need(
            Text(Of(font, "/CIDToGIDMap")) == "/Identity",
            $"{name}: no map to glyphs (A 6.2.11.3.2, UA 7.21.3.2)"
        );
    }

    private void CheckAnnotation(string name, JsonElement annotation)
    {
        var flags = Of(annotation, "/F") is { ValueKind: JsonValueKind.Number } number
            ? number.GetInt32()
            : 0;
        const int print = 4;
        const int forbidden = 1 | 2 | 32 | 256; // Invisible, Hidden, NoView, ToggleNoView
        Need((flags & print) != 0 && (flags & forbidden) == 0, $"{name}: flags {flags} (A 6.3.2)");
        Need(
            Of(annotation, "/StructParent") is not null,
            $"{name}: not in the structure (UA 7.18.1)"
        );
        Need(
            Of(annotation, "/Contents") is not null || Of(annotation, "/TU") is not null,
            $"{name}: no description (UA 7.18.1)"
        );
        Need(Of(annotation, "/AA") is null, $"{name}: additional actions (A 6.4.1)");
        Need(
            Text(Of(annotation, "/Subtype")) == "/Link"
                || Of(annotation, "/AP") is { } appearance
                    && appearance.EnumerateObject().Select(item => item.Name).SequenceEqual(["/N"]),
            $"{name}: appearance (A 6.3.3)"
        );
    }

    private void CheckPage((string Name, JsonElement Page) page)
    {
        var (name, dictionary) = page;
        Need(Of(dictionary, "/AA") is null, $"{name}: additional actions (A 6.5.2)");
        if (
            Of(dictionary, "/Annots") is { ValueKind: JsonValueKind.Array } annotations
            && annotations.GetArrayLength() > 0
        )
        {
            Need(Text(Of(dictionary, "/Tabs")) == "/S", $"{name}: order of tabs (UA 7.18.3)");
        }

        var contents = dictionary.GetProperty("/Contents");
        var text = string.Concat(
            (
                contents.ValueKind == JsonValueKind.Array
                || Resolve(contents).ValueKind == JsonValueKind.Array
                    ? (
                        contents.ValueKind == JsonValueKind.Array ? contents : Resolve(contents)
                    ).EnumerateArray()
                    : Enumerable.Repeat(contents, 1)
            ).Select(part => Encoding.Latin1.GetString(Data(Stream(part))) + "\n")
        );
        var depth = 0;
        foreach (
            var word in Strings()
                .Replace(text, " ")
                .Split(
                    [' ', '\n', '\r', '\t', '<', '>', '[', ']'],
                    StringSplitOptions.RemoveEmptyEntries
                )
        )
        {
            switch (word)
            {
                case "BDC" or "BMC":
                    depth++;
                    break;
                case "EMC":
                    depth--;
                    break;
                default:
                    Need(
                        depth > 0 || !s_shows.Contains(word),
                        $"{name}: {word} neither tagged nor an artifact (A 6.7.2, UA 7.1)"
                    );
                    break;
            }
        }

        Need(depth == 0, $"{name}: tags that do not close");
    }

    private IEnumerable<(string Name, JsonElement Page)> Pages(
        JsonElement node,
        string name = "page"
    )
    {
        if (Of(node, "/Kids") is not { ValueKind: JsonValueKind.Array } kids)
        {
            return [(name, node)];
        }

        return kids.EnumerateArray().SelectMany(kid => Pages(Resolve(kid), kid.ToString()));
    }

    private void Need(bool holds, string otherwise)
    {
        if (!holds && !_broken.Contains(otherwise))
        {
            _broken.Add(otherwise);
        }
    }

    private static JsonElement Value(JsonElement item) =>
        item.TryGetProperty("value", out var value) ? value
        : item.TryGetProperty("stream", out var stream) ? stream.GetProperty("dict")
        : item;

    private JsonElement Resolve(JsonElement value) =>
        value.ValueKind == JsonValueKind.String
        && _objects.TryGetValue("obj:" + value.GetString(), out var found)
            ? Value(found)
            : value;

    private JsonElement Stream(JsonElement reference) =>
        _objects["obj:" + reference.GetString()].GetProperty("stream");

    private static byte[] Data(JsonElement stream) =>
        stream.GetProperty("data").GetBytesFromBase64();

    private JsonElement? Of(JsonElement? dictionary, string name) =>
        dictionary is { ValueKind: JsonValueKind.Object } there
        && there.TryGetProperty(name, out var value)
        && Resolve(value) is { ValueKind: not JsonValueKind.Null } found
            ? found
            : null;

    private static string? Text(JsonElement? value) =>
        value is { ValueKind: JsonValueKind.String } text ? text.GetString() : null;

    [GeneratedRegex(
        @"\((\\.|[^\\()])*\)|<[0-9A-Fa-f\s]*>",
        RegexOptions.Singleline | RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture
    )]
    private static partial Regex Strings();
}
