using System.Buffers.Binary;
using System.Reflection;
using System.Reflection.Emit;

namespace StabilityStudy.Tests.Shared;

/// <summary>Reads what compiled code names.</summary>
internal static class NamedMembers
{
    private const int Wide = 0xFE;

    private static readonly Dictionary<int, OpCode> s_codes = typeof(OpCodes)
        .GetFields()
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => code.Value & 0xFFFF);

    /// <summary>The fields, methods and types that the code of a method names, in its order.</summary>
    public static IEnumerable<MemberInfo> In(MethodBase method)
    {
        var code = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        for (var at = 0; at < code.Length; )
        {
            var first = code[at++];
            var operand = s_codes[first == Wide ? (Wide << 8) | code[at++] : first].OperandType;
            if (
                operand
                    is OperandType.InlineField
                        or OperandType.InlineMethod
                        or OperandType.InlineTok
                        or OperandType.InlineType
                && method.Module.ResolveMember(
                    BinaryPrimitives.ReadInt32LittleEndian(code.AsSpan(at)),
                    method.DeclaringType!.IsGenericType
                        ? method.DeclaringType.GetGenericArguments()
                        : null,
                    method.IsGenericMethod ? method.GetGenericArguments() : null
                )
                    is { } member
            )
            {
                yield return member;
            }

            at +=
                operand == OperandType.InlineSwitch
                    ? 4 + (4 * BinaryPrimitives.ReadInt32LittleEndian(code.AsSpan(at)))
                    : Size(operand);
        }
    }

    private static int Size(OperandType operand) =>
        operand switch
        {
            OperandType.InlineNone => 0,
            OperandType.ShortInlineBrTarget
            or OperandType.ShortInlineI
            or OperandType.ShortInlineVar => 1,
            OperandType.InlineVar => 2,
            OperandType.InlineI8 or OperandType.InlineR => 8,
            _ => 4,
        };
}
