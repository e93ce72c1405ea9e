using StabilityStudy.Cli.Console;
using StabilityStudy.Cli.Folders;
using StabilityStudy.Pipeline.Signing;

namespace StabilityStudy.Cli.Commands;

/// <summary>Says what is to be done with a prepared report.</summary>
internal static class PreparedWords
{
    public static void Say(Terminal terminal, PreparedFolder folder, SigningAttempt.Done afterwards)
    {
        foreach (var remark in afterwards.Remarks)
        {
            terminal.Error.WriteLine(remark);
        }

        foreach (
            var line in (string[])
                [
                    $"Prepared for the signature as {afterwards.Role}. Nothing is signed yet.",
                    folder.ToSign,
                    "Within a day, have exactly the bytes of this file signed with the key of",
                    folder.Certificate,
                    "The answer must be a CMS signature: detached, DER or PEM, with SHA-256, SHA-384",
                    "or SHA-512, with the signing certificate among the signed attributes (CAdES).",
                    "With OpenSSL, KEY being the key on your card or token (pkcs11:...) or a file:",
                    "",
                    "  openssl cms -sign -binary -cades -md sha256 -nosmimecap -outform DER \\",
                    $"    -signer {Quoted(folder.Certificate)} -inkey KEY \\",
                    $"    -in {Quoted(folder.ToSign)} \\",
                    $"    -out {Quoted(folder.Answer)}",
                    "",
                    "Leave away -stream, -nodetach, -nocerts, -noattr and -keyid: what they make is",
                    "refused. If issuers gave your certificate, add theirs with -certfile FILE.",
                    "Then put the answer in:",
                    "",
                    $"  stability-study sign {Quoted(folder.Prepared)} \\",
                    $"    --complete {Quoted(folder.Answer)}",
                ]
        )
        {
            terminal.Out.WriteLine(line);
        }
    }

    private static string Quoted(string path) =>
        path.All(c => char.IsAsciiLetterOrDigit(c) || c is '/' or '.' or '-' or '_' or '\\' or ':')
            ? path
            : $"\"{path}\"";
}
