using System.Security.Cryptography.Pkcs;
using System.Security.Cryptography.X509Certificates;

namespace StabilityStudy.SignedPdf.Certificates;

/// <summary>What was found in key files before it is fitted together.</summary>
internal sealed record KeyParts(
    List<X509Certificate2> Certificates,
    List<Pkcs8PrivateKeyInfo> PrivateKeys
)
{
    public static KeyParts Empty => new([], []);
}
