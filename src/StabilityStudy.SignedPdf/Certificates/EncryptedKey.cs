using System.Security.Cryptography;
using System.Security.Cryptography.Pkcs;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Opens a private key protected by a passphrase (RFC 5208, section 6).</summary>
internal static class EncryptedKey
{
    public static SigningKeyProblem? Add(
        KeyParts parts,
        ReadOnlyMemory<byte> encrypted,
        string? passphrase
    )
    {
        if (passphrase is null)
        {
            return SigningKeyProblem.PassphraseNeeded;
        }

        try
        {
            parts.PrivateKeys.Add(
                Pkcs8PrivateKeyInfo.DecryptAndDecode(passphrase, encrypted, out _)
            );
            return null;
        }
        catch (CryptographicException)
        {
            // Wrong padding is the only sign that a passphrase is wrong.
            return SigningKeyProblem.WrongPassphrase;
        }
    }
}
