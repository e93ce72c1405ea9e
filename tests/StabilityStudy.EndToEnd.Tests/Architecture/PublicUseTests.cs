using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.CompilerServices;

namespace StabilityStudy.EndToEnd.Tests.Architecture;

/// <summary>What only its own project uses is not public.</summary>
public sealed class PublicUseTests
{
    private const BindingFlags Declared =
        BindingFlags.Public
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    public static TheoryData<string> Names => [.. Projects.Names.Where(name => name != "Cli")];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_public_type_is_used_by_another_project_or_stands_in_the_signature_of_one_that_is(
        string name
    )
    {
        var assembly = Projects.Load(name);
        var named = Projects
            .Names.Where(other => other != name)
            .SelectMany(other => NamedIn(Projects.Load(other), assembly.GetName().Name!))
            .ToHashSet(StringComparer.Ordinal);
        var visible = assembly.GetTypes().Where(type => type.IsVisible).ToArray();
        var used = new HashSet<Type>();
        var pending = new Stack<Type>(visible.Where(type => named.Contains(type.FullName!)));
        while (pending.TryPop(out var type))
        {
            if (type.Assembly == assembly && used.Add(type))
            {
                foreach (var other in SignatureTypes(type).SelectMany(Parts))
                {
                    pending.Push(other);
                }
            }
        }

        var unused = visible
            .Except(used)
            .Where(type => !HoldsConstants(type))
            .Select(type => type.FullName);
        Assert.NotEmpty(used);
        Assert.True(!unused.Any(), string.Join('\n', unused.Order(StringComparer.Ordinal)));
    }

    /// <summary>The compiler copies a constant to where it is used, and leaves no trace of its type there.</summary>
    private static bool HoldsConstants(Type type) =>
        !type.IsEnum
        && type.GetFields(Declared)
            .Any(static field =>
                field.IsLiteral || field.IsDefined(typeof(DecimalConstantAttribute))
            );

    /// <summary>Full names of the types of one assembly that the code of another names.</summary>
    private static ImmutableArray<string> NamedIn(Assembly user, string name)
    {
        using var file = new PEReader(File.OpenRead(user.Location));
        var metadata = file.GetMetadataReader();
        return
        [
            .. metadata
                .TypeReferences.Select(handle => NameOf(metadata, handle, name))
                .OfType<string>(),
        ];
    }

    private static string? NameOf(MetadataReader metadata, TypeReferenceHandle handle, string name)
    {
        var type = metadata.GetTypeReference(handle);
        var own = metadata.GetString(type.Name);
        return type.ResolutionScope.Kind switch
        {
            HandleKind.TypeReference => NameOf(
                metadata,
                (TypeReferenceHandle)type.ResolutionScope,
                name
            )
                is { } outer
                ? $"{outer}+{own}"
                : null,
            HandleKind.AssemblyReference
                when metadata.StringComparer.Equals(
                    metadata
                        .GetAssemblyReference((AssemblyReferenceHandle)type.ResolutionScope)
                        .Name,
                    name
                ) => $"{metadata.GetString(type.Namespace)}.{own}",
            _ => null,
        };
    }

    private static IEnumerable<Type> SignatureTypes(Type type) =>
        [
            .. type.BaseType is { } parent ? [parent] : Type.EmptyTypes,
            .. type.DeclaringType is { } outer ? [outer] : Type.EmptyTypes,
            .. type.GetInterfaces(),
            .. type.GetFields(Declared).Select(field => field.FieldType),
            .. type.GetMethods(Declared)
                .SelectMany(method =>
                    method
                        .GetParameters()
                        .Select(parameter => parameter.ParameterType)
                        .Append(method.ReturnType)
                ),
            .. type.GetConstructors(Declared)
                .SelectMany(constructor => constructor.GetParameters())
                .Select(parameter => parameter.ParameterType),
        ];

    /// <summary>The type as declared, and those that it is made of: elements and arguments.</summary>
    private static IEnumerable<Type> Parts(Type type) =>
        type.GetElementType() is { } element ? Parts(element)
        : type.IsGenericType
            ? type.GetGenericArguments()
                .Where(argument => !argument.IsGenericParameter)
                .SelectMany(Parts)
                .Append(type.GetGenericTypeDefinition())
        : [type];
}
