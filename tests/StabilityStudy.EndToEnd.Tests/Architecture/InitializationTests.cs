using System.Reflection;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

/// <summary>
/// Classes whose static fields need each other in a circle give null to whichever is asked second, and that depends on
/// what the program does first, or on which of two threads is faster.
/// </summary>
public sealed class InitializationTests
{
    private static readonly Assembly[] s_assemblies = [.. Projects.Names.Select(Projects.Load)];

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
    private static IEnumerable<MemberInfo> NamedIn(MethodBase method) =>
        NamedMembers
            .In(method)
            .Where(member =>
                member is not Type
                && member.DeclaringType is { } owner
                && s_assemblies.Contains(owner.Assembly)
            );

    private static Type Definition(Type type) =>
        type.IsGenericType ? type.GetGenericTypeDefinition() : type;
}
