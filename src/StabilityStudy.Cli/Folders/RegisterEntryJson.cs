using System.Text.Json.Serialization;
using StabilityStudy.Core.Register;

namespace StabilityStudy.Cli.Folders;

/// <summary>Entries of a register as the cache keeps them; read by the very build that wrote them alone, so that their form is nobody's contract.</summary>
[JsonSourceGenerationOptions(IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(RegisterEntry))]
internal sealed partial class RegisterEntryJson : JsonSerializerContext;
