using System.Security.Cryptography.Pkcs;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>Takes certificates and private keys out of a PKCS#12 file (RFC 7292).</summary>
internal static class Pkcs12KeyFile
{
    /// <summary>Adds what is in the file; returns what is wrong with it, or null.</summary>
    public static SigningKeyProblem? Add(
        KeyParts parts,
        ReadOnlyMemory<byte> file,
        string? passphrase
    )
    {
        var info = Pkcs12Info.Decode(file, out _);
        if (info.IntegrityMode == Pkcs12IntegrityMode.PublicKey)
        {
            return SigningKeyProblem.KeyNotSupported;
        }

        var opens =
            info.IntegrityMode != Pkcs12IntegrityMode.Password || info.VerifyMac(passphrase);
        if (!opens && passphrase is null)
        {
            // No passphrase and an empty one are two things in this format.
            passphrase = "";
            opens = info.VerifyMac(passphrase);
            if (!opens)
            {
                return SigningKeyProblem.PassphraseNeeded;
            }
        }

        if (!opens)
        {
            return SigningKeyProblem.WrongPassphrase;
        }

        foreach (var contents in info.AuthenticatedSafe)
        {
            if (contents.ConfidentialityMode == Pkcs12ConfidentialityMode.PublicKey)
            {
                return SigningKeyProblem.KeyNotSupported;
            }

            if (contents.ConfidentialityMode == Pkcs12ConfidentialityMode.Password)
            {
                contents.Decrypt(passphrase);
            }

            foreach (var bag in contents.GetBags())
            {
                if (AddBag(parts, bag, passphrase) is { } problem)
                {
                    return problem;
                }
            }
        }

        return null;
    }

    private static SigningKeyProblem? AddBag(KeyParts parts, Pkcs12SafeBag bag, string? passphrase)
    {
        switch (bag)
        {
            case Pkcs12CertBag { IsX509Certificate: true } certificate:
                parts.Certificates.Add(certificate.GetCertificate());
                return null;
            case Pkcs12KeyBag key:
                parts.PrivateKeys.Add(Pkcs8PrivateKeyInfo.Decode(key.Pkcs8PrivateKey, out _));
                return null;
            case Pkcs12ShroudedKeyBag key:
                return EncryptedKey.Add(parts, key.EncryptedPkcs8PrivateKey, passphrase ?? "");
            default:
                return null;
        }
    }
}
