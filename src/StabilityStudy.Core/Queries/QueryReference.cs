using System.Security.Cryptography;
using System.Text;

namespace StabilityStudy.Core.Queries;

/// <summary>
/// The reference of a data query, by which study.toml answers it. It is made of the kind, the place and the words: where any of them changes, the query is
/// another one and open again. What was read is no part of it, since <c>check</c> leaves out results that a report quotes.
/// </summary>
public static class QueryReference
{
    private const int Length = 8;

    /// <summary>The reference: eight hexadecimal digits.</summary>
    public static string Of(DataQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"{query.Code}\n{query.Source.File}\n{query.Source.Line}\n{query.Source.Column}\n{query.Message}"
        );
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..Length];
    }

    /// <summary>Whether a text can be one.</summary>
    public static bool IsReference(string text) =>
        text is { Length: Length }
        && text.All(c => char.IsAsciiHexDigitLower(c) || char.IsAsciiDigit(c));
}
