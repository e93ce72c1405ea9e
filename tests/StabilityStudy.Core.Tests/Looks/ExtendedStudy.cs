using StabilityStudy.Core.Locking;
using StabilityStudy.Core.Protocol;
using StabilityStudy.Core.Tests.Studies;

namespace StabilityStudy.Core.Tests.Looks;

/// <summary>A study of thirty specimens that leaves the share open, and the same with twenty favorable ones added a month later.</summary>
internal static class ExtendedStudy
{
    public const int First = 30;
    public const int Added = 20;

    /// <summary>When the first thirty were looked at: after their last day and before the others came.</summary>
    public static readonly DateTimeOffset Look = new(2026, 3, 20, 12, 0, 0, TimeSpan.Zero);

    /// <summary>The first thirty, of which two changed by a third: too many to show 85 of 100, too few to refute it.</summary>
    public static SmallStudy Thirty { get; } = Of(First);

    /// <summary>All fifty, with which two outside would not keep the share from being shown.</summary>
    public static SmallStudy Fifty { get; } = Of(First + Added);

    public static SmallStudy Planned(this SmallStudy study, int specimens, int looks = 1) =>
        study.Protocol(protocol => Protocol(protocol, specimens, looks));

    /// <summary>Locked before data with thirty, and again at a time with fifty.</summary>
    public static SmallStudy Amended(
        this SmallStudy study,
        DateTimeOffset at,
        int firstLooks = 1,
        int looks = 1
    )
    {
        var protocol = study.Inputs.Protocol;
        var amended = Protocol(protocol, First + Added, looks);
        return new(
            study.Inputs with
            {
                Protocol = amended,
                Locks =
                [
                    new ProtocolLock(1, "1", new(2026, 3, 1, 0, 0, 0, TimeSpan.Zero), "LS1", null)
                    {
                        Protocol = Protocol(protocol, First, firstLooks),
                    },
                    new ProtocolLock(2, "2", at, "LS1", "more people were willing")
                    {
                        Protocol = amended,
                        Differences =
                        [
                            new("group.none.specimens", "30", "50", DifferenceKind.Number),
                        ],
                    },
                ],
            }
        );
    }

    private static StudyProtocol Protocol(StudyProtocol protocol, int specimens, int looks) =>
        protocol with
        {
            Groups = [protocol.Groups[0] with { Specimens = specimens }],
            PlannedLooks = looks,
        };

    private static SmallStudy Of(int specimens) =>
        SmallStudy
            .Of(
                [6],
                Enumerable
                    .Range(0, specimens)
                    .Select(i =>
                        $"{SmallRows.Text(30 + (i % 7))} | {SmallRows.Text(i is 3 or 14 ? 45 : 30 + (i % 7))}"
                    )
            )
            .Criteria(SmallProtocol.EachCriterion)
            .Collecting()
            .Later(First, days: 30);

    /// <summary>Moves the specimens from a number on to later days.</summary>
    public static SmallStudy Later(this SmallStudy study, int from, int days)
    {
        bool IsLater(string specimen) => string.CompareOrdinal(specimen, SmallRows.Code(from)) >= 0;
        return study
            .Tubes(tube =>
                IsLater(tube.Specimen)
                    ? tube with
                    {
                        CollectedAt = tube.CollectedAt.AddDays(days),
                        SpunAt = tube.SpunAt?.AddDays(days),
                    }
                    : tube
            )
            .Rows(row =>
                IsLater(row.Specimen) ? row with { TestedAt = row.TestedAt?.AddDays(days) } : row
            );
    }
}
