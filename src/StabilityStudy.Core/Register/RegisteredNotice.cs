using StabilityStudy.Core.Notices;

namespace StabilityStudy.Core.Register;

/// <summary>What a notice in the register is worth. The zero member is the cautious one.</summary>
public enum NoticeStanding
{
    /// <summary>It could not be verified.</summary>
    NotTrusted,

    /// <summary>Nothing is wrong with it, and nobody has signed it.</summary>
    NotSigned,

    /// <summary>It was verified.</summary>
    Counts,
}

/// <summary>A notice of the register.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Standing">What it is worth.</param>
/// <param name="Notice">What it says.</param>
public sealed record RegisteredNotice(string File, NoticeStanding Standing, Notice Notice)
{
    /// <summary>Why it does not count; null where it counts.</summary>
    public string? Why { get; init; }

    /// <summary>What could not be checked of a notice that counts, in words.</summary>
    public ImmutableArray<string> Reservations { get; init; } = [];

    /// <summary>When it was signed, by the clock of the signer; null where nobody has signed.</summary>
    public DateTimeOffset? SignedAt { get; init; }

    /// <summary>Whether it was verified.</summary>
    public bool Counts => Standing == NoticeStanding.Counts;

    /// <summary>First day on which it can have an effect: of a notice that takes windows away the day that it states.</summary>
    public DateOnly From =>
        Notice.From
        ?? (SignedAt is { } at ? DateOnly.FromDateTime(at.DateTime) : DateOnly.MaxValue);
}

/// <summary>What one file or folder brings into the register: one of the three, or nothing.</summary>
public sealed record RegisterEntry
{
    /// <summary>A report.</summary>
    public RegisteredReport? Report { get; init; }

    /// <summary>A notice.</summary>
    public RegisteredNotice? Notice { get; init; }

    /// <summary>A study.</summary>
    public RegisteredStudy? Study { get; init; }

    /// <summary>The same under another name of the file.</summary>
    public RegisterEntry Named(string file) =>
        new()
        {
            Report = Report is null ? null : Report with { File = file },
            Notice = Notice is null ? null : Notice with { File = file },
            Study = Study is null ? null : Study with { Place = file },
        };
}
