using System.Reflection;
using StabilityStudy.Files.Intake;

namespace StabilityStudy.Files.Tests;

/// <summary>Folders use each other in one direction only, as seen in the compiled code.</summary>
public sealed class FolderTests
{
    private const BindingFlags Everything =
        BindingFlags.Public
        | BindingFlags.NonPublic
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    private static readonly Assembly Files = typeof(StudyIntake).Assembly;

    [Fact]
    public void No_folder_is_used_by_one_that_it_uses()
    {
        var uses = Files
            .GetTypes()
            .SelectMany(type =>
                Used(type).Select(used => (From: type.Namespace!, To: used.Namespace!))
            )
            .Where(use => IsFolder(use.From) && IsFolder(use.To) && use.From != use.To)
            .ToLookup(use => use.From, use => use.To);
        Assert.Contains("StabilityStudy.Files.Words", uses["StabilityStudy.Files.Toml"]);

        var done = new HashSet<string>();
        foreach (var folder in uses.Select(group => group.Key))
        {
            Visit(folder, []);
        }

        void Visit(string folder, List<string> path)
        {
            Assert.False(path.Contains(folder), string.Join(" → ", [.. path, folder]));
            foreach (var used in done.Contains(folder) ? [] : uses[folder].Distinct())
            {
                Visit(used, [.. path, folder]);
            }

            done.Add(folder);
        }
    }

    private static bool IsFolder(string name) =>
        name.StartsWith("StabilityStudy.Files.", StringComparison.Ordinal);

    private static IEnumerable<Type> Used(Type type)
    {
        var methods = type.GetMethods(Everything)
            .Cast<MethodBase>()
            .Concat(type.GetConstructors(Everything))
            .ToArray();
        Type?[] named =
        [
            type.BaseType,
            .. type.GetInterfaces(),
            .. type.GetFields(Everything).Select(field => field.FieldType),
            .. methods.SelectMany(method => method.GetParameters()).Select(p => p.ParameterType),
            .. methods.OfType<MethodInfo>().Select(method => method.ReturnType),
            .. methods.SelectMany(Called),
        ];
        return named
            .OfType<Type>()
            .SelectMany(Parts)
            .Where(used => used.Assembly == Files && used.Namespace is not null);
    }

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!)
        : type.IsGenericType
            ? [type.GetGenericTypeDefinition(), .. type.GetGenericArguments().SelectMany(Parts)]
        : [type];

    /// <summary>The types of every member that the code of a method names.</summary>
    private static IEnumerable<Type?> Called(MethodBase method) =>
        NamedMembers
            .In(method)
            .SelectMany(member =>
                (Type?[])
                    [
                        member as Type ?? member.DeclaringType,
                        .. member is MethodInfo { IsGenericMethod: true } generic
                            ? generic.GetGenericArguments()
                            : [],
                    ]
            );
}
