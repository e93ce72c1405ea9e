using System.Buffers.Binary;
using System.Reflection;
using System.Reflection.Emit;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

/// <summary>
/// Classes whose static fields need each other in a circle give null to whichever is asked second, and that depends on
/// what the program does first, or on which of two threads is faster.
/// </summary>
public sealed class InitializationTests
{
    private static readonly Assembly[] s_assemblies = [.. Projects.Names.Select(Projects.Load)];

    private static readonly Dictionary<short, OpCode> s_operations = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(operation => operation.Value);

    [Fact]
    public void No_static_fields_need_each_other_in_a_circle()
    {
        var needs = s_assemblies
            .SelectMany(assembly => assembly.GetTypes())
            .Where(type => type.TypeInitializer is not null)
            .ToDictionary(type => type, NeededBy);

        var circle = needs.Keys.FirstOrDefault(type => IsReached(type, needs[type], needs));

        Assert.True(needs.Values.Sum(needed => needed.Count) > 100);
        Assert.True(circle is null, circle is null ? "" : Path(circle, needs));
    }

    private static bool IsReached(
        Type wanted,
        IEnumerable<Type> from,
        Dictionary<Type, HashSet<Type>> needs
    ) => From(from, needs).Contains(wanted);

    /// <summary>All classes that must be initialized before the given ones are.</summary>
    private static HashSet<Type> From(
        IEnumerable<Type> first,
        Dictionary<Type, HashSet<Type>> needs
    )
    {
        var reached = new HashSet<Type>();
        var pending = new Stack<Type>(first);
        while (pending.TryPop(out var type))
        {
            if (reached.Add(type))
            {
                foreach (var next in needs[type])
                {
                    pending.Push(next);
                }
            }
        }

        return reached;
    }

    /// <summary>The circle in words: each class needs the next.</summary>
    private static string Path(Type type, Dictionary<Type, HashSet<Type>> needs) =>
        string.Join(
            ", ",
            From([type], needs)
                .Where(other => IsReached(type, needs[other], needs))
                .Select(other => other.FullName)
                .Order(StringComparer.Ordinal)
        ) + " need each other.";

    /// <summary>The classes whose static fields are read while those of a class are set.</summary>
    private static HashSet<Type> NeededBy(Type type)
    {
        var needed = new HashSet<Type>();
        var seen = new HashSet<MethodBase>();
        var pending = new Stack<MethodBase>([type.TypeInitializer!]);
        while (pending.TryPop(out var method))
        {
            if (!seen.Add(method))
            {
                continue;
            }

            foreach (var member in NamedIn(method))
            {
                if (member is FieldInfo { IsStatic: true, IsLiteral: false })
                {
                    var owner = Definition(member.DeclaringType!);
                    if (owner != type && owner.TypeInitializer is not null)
                    {
                        needed.Add(owner);
                    }
                }
                else if (member is MethodBase called)
                {
                    pending.Push(called);
                }
            }
        }

        return needed;
    }

    /// <summary>The fields and methods of the project that the code of a method names.</summary>
    private static IEnumerable<MemberInfo> NamedIn(MethodBase method)
    {
        var code = method.GetMethodBody()?.GetILAsByteArray() ?? [];
        for (var place = 0; place < code.Length; )
        {
            var operation = s_operations[
                code[place] == 0xFE
                    ? BinaryPrimitives.ReadInt16BigEndian(code.AsSpan(place))
                    : code[place]
            ];
            place += operation.Size;
            if (
                operation.OperandType is OperandType.InlineField or OperandType.InlineMethod
                && Resolved(method, BinaryPrimitives.ReadInt32LittleEndian(code.AsSpan(place)))
                    is { DeclaringType: { } owner } member
                && s_assemblies.Contains(owner.Assembly)
            )
            {
                yield return member;
            }

            place += LengthOf(operation.OperandType, code, place);
        }
    }

    private static MemberInfo? Resolved(MethodBase method, int token) =>
        method.Module.ResolveMember(
            token,
            method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null,
            method.IsGenericMethod ? method.GetGenericArguments() : null
        );

    private static int LengthOf(OperandType operand, byte[] code, int place) =>
        operand switch
        {
            OperandType.InlineNone => 0,
            OperandType.ShortInlineBrTarget
            or OperandType.ShortInlineI
            or OperandType.ShortInlineVar => 1,
            OperandType.InlineVar => 2,
            OperandType.InlineI8 or OperandType.InlineR => 8,
            OperandType.InlineSwitch => 4
                + (4 * BinaryPrimitives.ReadInt32LittleEndian(code.AsSpan(place))),
            _ => 4,
        };

    private static Type Definition(Type type) =>
        type.IsGenericType ? type.GetGenericTypeDefinition() : type;
}
