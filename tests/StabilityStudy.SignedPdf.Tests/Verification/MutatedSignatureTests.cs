using System.Diagnostics;
using StabilityStudy.SignedPdf.Tests.LongTerm;
using StabilityStudy.SignedPdf.Tests.Reading;
using StabilityStudy.SignedPdf.Tests.Signing;
using StabilityStudy.SignedPdf.Verification;

namespace StabilityStudy.SignedPdf.Tests.Verification;

/// <summary>
/// Signed files damaged at random (always the same way): an answer soon, never an exception, and never that all is well. The
/// variable FUZZ_INPUTS asks for another number of inputs, FUZZ_SEED for others.
/// </summary>
public static class MutatedSignatureTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(1);
    private const long MostMemory = 500L * 1024 * 1024;

    [Fact]
    public static void Damaged_signed_files_never_throw_or_hang_or_hold()
    {
        var count = LongProof.Setting("FUZZ_INPUTS", 480);
        var seed = LongProof.Setting("FUZZ_SEED", 3);
        (byte[] File, string LastField)[] files =
        [
            (Signed(SignedDocument.Small), "approver"),
            (RenewedDocument.Small, "archive1"),
            (Signed(SignedDocument.Unsigned), "approver"),
        ];
        var options = Signers.Trusting;
        var random = new Random(seed);
        var readable = 0;
        for (var i = 0; i < count; i++)
        {
            var (file, lastField) = files[i % 16 == 0 ? 2 : i / 2 % 2];
            var mutated =
                i % 2 == 0 ? Mutation.Of(file, random) : InSignature(file, lastField, random);
            var start = Stopwatch.GetTimestamp();
            var allocated = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                var verification = SignatureVerifier.Verify(mutated, options);
                readable += verification.Failure is null ? 1 : 0;
                // A whole last revision may be gone: the document before it is a signed one too.
                Assert.True(
                    !verification.Holds || file.AsSpan().StartsWith(mutated),
                    $"Mutation {i} of seed {seed} was not found."
                );
            }
            catch (Exception exception)
            {
                throw new InvalidOperationException($"Mutation {i} of seed {seed}.", exception);
            }

            // What is allocated in all is more than what is held at once.
            Assert.True(
                GC.GetAllocatedBytesForCurrentThread() - allocated < MostMemory,
                $"Mutation {i} of seed {seed} took too much memory."
            );
            // A busy machine may hold up a run by the clock, but costs it no more of the processor's time.
            Assert.True(
                Stopwatch.GetElapsedTime(start) < Longest || IsSoon(mutated, options),
                $"Mutation {i} of seed {seed} took too long."
            );
        }

        Assert.InRange(readable, count / 100, count);
    }

    private static bool IsSoon(byte[] file, VerificationOptions options)
    {
        var start = Environment.CpuUsage.TotalTime;
        SignatureVerifier.Verify(file, options);
        return Environment.CpuUsage.TotalTime - start < Longest;
    }

    // One certificate in each: others beside the signer's are covered by no signature.
    private static byte[] Signed(byte[] unsigned) =>
        SignedDocument.Sign(
            SignedDocument.Sign(
                unsigned,
                SignedDocument.Author with
                {
                    Key = Signers.Author.SigningKey(),
                }
            ),
            SignedDocument.Approver
        );

    /// <summary>A few digits of the container changed, so that its own structure is tried.</summary>
    private static byte[] InSignature(byte[] file, string field, Random random)
    {
        var changed = file.ToArray();
        var (start, _) = Forgery.Gap(file, field);
        var length = 2 * Forgery.Container(file, field).Length;
        for (var changes = random.Next(1, 4); changes > 0; changes--)
        {
            changed[start + 1 + random.Next(length)] = (byte)"0123456789ABCDEF"[random.Next(16)];
        }

        return changed;
    }
}
