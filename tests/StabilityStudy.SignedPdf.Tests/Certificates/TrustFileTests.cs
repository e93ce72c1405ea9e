using System.Text;
using StabilityStudy.SignedPdf.Certificates;
using StabilityStudy.SignedPdf.Tests.Drawing;
using StabilityStudy.SignedPdf.Tests.Signing;

namespace StabilityStudy.SignedPdf.Tests.Certificates;

/// <summary>What a file says about whom to trust, told by its content.</summary>
public static class TrustFileTests
{
    private static readonly byte[] s_list = Signers.RevocationListOf(
        Signers.Time,
        Signers.Time,
        Signers.Author
    );

    private static readonly byte[] s_listPem = Encoding.ASCII.GetBytes(
        System.Security.Cryptography.PemEncoding.WriteString("X509 CRL", s_list) + "\n"
    );

    [Fact]
    public static void Certificates_and_lists_in_both_forms_are_told_apart()
    {
        var certificate = Read(Signers.Authority.Certificate.RawData);
        var list = Read(s_list);

        Assert.True(certificate.HoldsCertificate);
        Assert.Empty(certificate.RevocationLists);
        Assert.False(list.HoldsCertificate);
        Assert.Equal("CN=Trial Authority", Assert.Single(list.RevocationLists).Issuer);
    }

    [Fact]
    public static void One_file_may_hold_both()
    {
        var file = Read([
            .. Signers.Authority.CertificatePem,
            .. s_listPem,
            .. Signers.OtherAuthority.CertificatePem,
        ]);

        Assert.Single(file.RevocationLists);
        Assert.Equal(2, TrustAnchors.Of([file]).Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("nothing")]
    [InlineData("0\u0003\u0002\u0001\u0005")]
    [InlineData("-----BEGIN CERTIFICATE-----")]
    [InlineData("-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----\n")]
    [InlineData("-----BEGIN X509 CRL-----\nAAAA\n-----END X509 CRL-----\n")]
    [InlineData("-----BEGIN X-----\nAAAA\n-----END X-----\n")]
    public static void What_is_neither_is_refused(string text) =>
        Assert.False(TrustFile.Read(HandMadePdf.Bytes(text)).TryGet(out _, out _));

    [Fact]
    public static void A_certificate_is_no_list() =>
        Assert.False(RevocationList.Read(Signers.Authority.CertificatePem).TryGet(out _, out _));

    [Fact]
    public static void A_list_with_bytes_behind_it_is_refused() =>
        Assert.False(TrustFile.Read((byte[])[.. s_list, 0]).TryGet(out _, out _));

    private static TrustFile Read(byte[] file) => Rewritten.Value(TrustFile.Read(file));
}
