using System.Diagnostics.CodeAnalysis;
using System.Text;
using StabilityStudy.Core.Locking;
using StabilityStudy.Files.Canonical;

namespace StabilityStudy.Files.Locking;

/// <summary>Reads and writes amendment.toml: what the document of an amended protocol states of the amendment.</summary>
public static class AmendmentFile
{
    /// <summary>Name of the file.</summary>
    public const string Name = "amendment.toml";

    private const int Format = 1;

    /// <summary>Writes it.</summary>
    public static ReadOnlyMemory<byte> Write(ProtocolAmendment amendment)
    {
        ArgumentNullException.ThrowIfNull(amendment);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"format = {Format}\n");
        text.Append(
            CultureInfo.InvariantCulture,
            $"{AmendmentKeys.LockNumber.Name} = {amendment.LockNumber}\n"
        );
        Line(AmendmentKeys.On, amendment.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Line(AmendmentKeys.Reason, amendment.Reason);
        Line(AmendmentKeys.EarlierProtocol, amendment.EarlierProtocolSha256);
        Line(AmendmentKeys.EarlierLock, amendment.EarlierLockSha256);
        Line(AmendmentKeys.EarlierDocument, amendment.EarlierDocumentSha256);
        foreach (var change in amendment.Changes)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[[{AmendmentKeys.Changes.Name}]]\n");
            Line(AmendmentKeys.Place, change.Key);
            Line(AmendmentKeys.Before, change.Before);
            Line(AmendmentKeys.After, change.After);
        }

        return Encoding.UTF8.GetBytes(text.ToString());

        void Line(Key key, string? value)
        {
            if (value is not null)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{key.Name} = {TomlLiteral.Quoted(value)}\n"
                );
            }
        }
    }

    /// <summary>Reads it, and holds it against both protocols: the earlier one must be the one it names, and the changes those that there are.</summary>
    /// <param name="utf8">Content of the file.</param>
    /// <param name="earlier">The protocol of the lock before, byte for byte.</param>
    /// <param name="amended">The amended protocol.</param>
    /// <param name="amendment">What it states.</param>
    /// <param name="fault">Why it does not hold, in words.</param>
    public static bool TryRead(
        ReadOnlyMemory<byte> utf8,
        ReadOnlyMemory<byte> earlier,
        ReadOnlyMemory<byte> amended,
        [NotNullWhen(true)] out ProtocolAmendment? amendment,
        [NotNullWhen(false)] out string? fault
    )
    {
        amendment = null;
        var queries = new QueryList();
        var stated = Read(utf8, queries);
        if (stated is null || queries.StopCount > 0)
        {
            var first = queries.ToImmutable()[0];
            fault = $"{Name} in the file cannot be read: {first.Source}: {first.Message}";
            return false;
        }

        if (InputDigest.Sha256(earlier.Span) != stated.EarlierProtocolSha256)
        {
            fault = "The earlier protocol in the file is not the one that the amendment names.";
            return false;
        }

        var changes = LockedProtocols.Between(earlier, amended);
        if (
            changes is null
            || !changes.Value.Select(Shown).SequenceEqual(stated.Changes.Select(Shown))
        )
        {
            fault =
                "The list of changes in the file is not what differs between the earlier protocol and the amended one.";
            return false;
        }

        amendment = stated with { Changes = changes.Value };
        fault = null;
        return true;
    }

    private static (string, string?, string?) Shown(ProtocolDifference change) =>
        (change.Key, change.Before, change.After);

    private static ProtocolAmendment? Read(ReadOnlyMemory<byte> utf8, QueryList queries)
    {
        if (TomlDocument.Read(utf8, Name, queries) is not { } entries)
        {
            return null;
        }

        var root = TomlTable.Root(entries, AmendmentKeys.Root, Name, queries);
        FormatNumber.Check(root, AmendmentKeys.Format, Format);
        return new ProtocolAmendment(
            root.Read(AmendmentKeys.LockNumber),
            root.Read(AmendmentKeys.On),
            root.Read(AmendmentKeys.Reason),
            root.Read(AmendmentKeys.EarlierProtocol),
            root.Read(AmendmentKeys.EarlierLock),
            root.Read(AmendmentKeys.EarlierDocument),
            [
                .. root.Tables(AmendmentKeys.Changes)
                    .Select(table => new ProtocolDifference(
                        table.Read(AmendmentKeys.Place),
                        table.Read(AmendmentKeys.Before),
                        table.Read(AmendmentKeys.After),
                        DifferenceKind.Rule
                    )),
            ]
        );
    }
}
