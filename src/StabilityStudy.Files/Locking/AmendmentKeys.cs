using static StabilityStudy.Files.Toml.ValueForms;
using static StabilityStudy.Files.Words.Need;

namespace StabilityStudy.Files.Locking;

/// <summary>The keys of amendment.toml, which the document of an amended protocol carries. The program writes them, so none has an example.</summary>
internal static class AmendmentKeys
{
    public static readonly KeyTable Root = new();

    // csharpier-ignore-start
    public static readonly Key<int> Format = FormatNumber.Declare(Root);
    public static readonly Key<int> LockNumber = Root.Add("lock", Required, Whole(2, LockKeys.MostLocks), "number of the lock that the amended protocol gets", "");
    public static readonly Key<DateOnly> On = Root.Add("date", Required, Date, "day on which the document was made", "");
    public static readonly Key<string> Reason = Root.Add("reason", Required, Text, "why the protocol is amended", "");
    public static readonly Key<string> EarlierProtocol = Root.Add("earlier_protocol_sha256", Required, Text, "SHA-256 of the protocol of the lock before", "");
    public static readonly Key<string> EarlierLock = Root.Add("earlier_lock_sha256", Required, Text, "SHA-256 of the statement of that lock", "");
    public static readonly Key<string?> EarlierDocument = Root.Add("earlier_document_sha256", Optional, OptionalText, "SHA-256 of the signed protocol document of that lock", "");
    // csharpier-ignore-end

    private static readonly KeyTable Table = new();

    // csharpier-ignore-start
    public static readonly TableKey Changes = Root.AddTables("change", Optional, Table, "every place at which the protocols differ", "[[change]]");
    public static readonly Key<string> Place = Table.Add("key", Required, Text, "the place", "");
    public static readonly Key<string?> Before = Table.Add("before", Optional, OptionalText, "what stood there, as written", "");
    public static readonly Key<string?> After = Table.Add("after", Optional, OptionalText, "what stands there, as written", "");
    // csharpier-ignore-end
}
