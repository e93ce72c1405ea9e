using System.Net.Http.Headers;
using System.Security.Cryptography;
using StabilityStudy.SignedPdf.Signing;

namespace StabilityStudy.Cli.Folders;

/// <summary>Asks a time-stamp authority over HTTP (RFC 3161, section 3.4).</summary>
internal static class TimeStampAuthority
{
    private const int NonceLength = 16;
    private const int LongestAnswer = 1 << 16;
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(30);

    /// <summary>The authority at an address.</summary>
    /// <exception cref="UsageException">The address is not of HTTP.</exception>
    public static TimeStampSource At(string address)
    {
        if (
            !Uri.TryCreate(address, UriKind.Absolute, out var uri)
            || uri.Scheme is not ("http" or "https")
        )
        {
            throw new UsageException(
                $"--time-stamp needs the address of an authority, such as https://tsa.example/; this is none: {address}"
            );
        }

        return new TimeStampSource(
            request => Ask(uri, request),
            RandomNumberGenerator.GetBytes(NonceLength)
        );
    }

    private static ReadOnlyMemory<byte>? Ask(Uri address, ReadOnlyMemory<byte> request)
    {
        try
        {
            using var client = new HttpClient { Timeout = s_patience };
            client.MaxResponseContentBufferSize = LongestAnswer;
            using var content = new ReadOnlyMemoryContent(request);
            content.Headers.ContentType = new MediaTypeHeaderValue("application/timestamp-query");
            using var message = new HttpRequestMessage(HttpMethod.Post, address)
            {
                Content = content,
            };
            using var answer = client.Send(message);
            using var body = new MemoryStream();
            answer.EnsureSuccessStatusCode().Content.CopyTo(body, null, default);
            return body.ToArray();
        }
        catch (Exception error)
            when (error is HttpRequestException or TaskCanceledException or IOException)
        {
            return null;
        }
    }
}
