using StabilityStudy.Core.Analysis;
using StabilityStudy.Core.Locking;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>Which study, which bytes, and what the locks say.</summary>
internal static class IdentityForms
{
    public static readonly ObjectForm<FileHash> FileHashForm = new("fileHash")
    {
        { "name", v => v.Name, Form.Text },
        { "sha256", v => v.Sha256, Form.Text },
    };

    public static readonly ObjectForm<StudyIdentity> StudyIdentityForm = new("studyIdentity")
    {
        { "inputDigest", v => v.InputDigest, Form.Text },
        { "inputs", v => v.Inputs, Form.Keyed(FileHashForm, "name") },
        { "dataSha256", v => v.DataSha256, Form.Text },
        { "rawFiles", v => v.RawFiles, Form.Keyed(FileHashForm, "name") },
    };

    public static readonly ObjectForm<ProtocolApproval> ProtocolApprovalForm = new(
        "protocolApproval"
    )
    {
        { "role", v => v.Role, Form.Text },
        { "by", v => v.By, Form.Text },
        { "at", v => v.At, Form.Time },
        { "stampedAt", v => v.StampedAt, Form.Time.OrNull() },
    };

    public static readonly ObjectForm<ProtocolLock> ProtocolLockForm = new("protocolLock")
    {
        { "number", v => v.Number, Form.Count },
        { "protocolSha256", v => v.ProtocolSha256, Form.Text },
        { "at", v => v.At, Form.Time },
        { "by", v => v.By, Form.Text },
        { "reason", v => v.Reason, Form.Text.OrNull() },
        { "lowChanceAccepted", v => v.LowChanceAccepted, Form.Text.OrLeftOut() },
        { "level", v => v.Level, Form.Word<LockLevel>() },
        { "stampedAt", v => v.StampedAt, Form.Time.OrNull() },
        { "differences", v => v.Differences ?? [], Form.List(LookForms.DifferenceForm) },
        { "keepsRules", v => v.KeepsRules, Form.Truth },
        { "approval", v => v.Approval, ProtocolApprovalForm.OrNull() },
    };

    public static readonly ObjectForm<LockEvidence> LockEvidenceForm = new("lockEvidence")
    {
        { "standing", v => v.Standing, Form.Word<LockStanding>() },
        { "level", v => v.Level, Form.Word<LockLevel>() },
        { "firstCollection", v => v.FirstCollection, Form.Time.OrNull() },
        { "locks", v => v.Locks, Form.Keyed(ProtocolLockForm, "number") },
    };
}
