using System.Text.Json;
using System.Text.Json.Nodes;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>A value whose property is left out where there is none, so that a study without it has the same bytes as before there was such a property.</summary>
/// <param name="form">The form of the value.</param>
/// <param name="isThere">Whether there is one.</param>
/// <param name="isAnswer">Whether every version has the property, so that one that is left out says as much as one that stands there.</param>
internal sealed class LeftOutForm<T>(Form<T> form, Func<T, bool> isThere, bool isAnswer = false)
    : Form<T>
{
    /// <summary>Whether a property that is left out says as much as one that stands there.</summary>
    public bool IsAnswer => isAnswer;

    /// <summary>Whether there is a value.</summary>
    public bool IsThere(T value) => isThere(value);

    public override void Write(Utf8JsonWriter json, T value) => form.Write(json, value);

    public override JsonNode Schema(SchemaDefinitions definitions) => form.Schema(definitions);

    public override void Compare(
        JsonElement stated,
        JsonElement computed,
        string path,
        AnalysisComparison comparison
    ) => form.Compare(stated, computed, path, comparison);
}

/// <summary>Leaves out what is not there.</summary>
internal static class LeftOutValue
{
    /// <summary>The value, or no property.</summary>
    public static Form<T?> OrLeftOut<T>(this Form<T> form)
        where T : class =>
        new LeftOutForm<T?>(Form.Of<T?, T>(form, value => value!), value => value is not null);

    /// <summary>The list, or no property where it is empty.</summary>
    public static Form<ImmutableArray<T>> OrLeftOut<T>(this Form<ImmutableArray<T>> form) =>
        new LeftOutForm<ImmutableArray<T>>(form, list => !list.IsEmpty);

    /// <summary>A word that is left out where it is the usual one, which goes without saying.</summary>
    public static Form<T> OrLeftOutFor<T>(this Form<T> form, T usual)
        where T : struct =>
        new LeftOutForm<T>(form, value => !EqualityComparer<T>.Default.Equals(value, usual));

    /// <summary>The value; no property says that there is none.</summary>
    public static Form<T?> OrNone<T>(this Form<T> form)
        where T : class =>
        new LeftOutForm<T?>(
            Form.Of<T?, T>(form, value => value!),
            value => value is not null,
            isAnswer: true
        );

    /// <summary>True or false; no property says the usual one.</summary>
    public static Form<bool> Unless(this Form<bool> form, bool usual) =>
        new LeftOutForm<bool>(form, value => value != usual, isAnswer: true);
}

/// <summary>Leaves out what is not there.</summary>
internal static class LeftOutNumber
{
    /// <summary>The value, or no property.</summary>
    public static Form<T?> OrLeftOut<T>(this Form<T> form)
        where T : struct =>
        new LeftOutForm<T?>(
            Form.Of<T?, T>(form, value => value.GetValueOrDefault()),
            value => value.HasValue
        );

    /// <summary>The value; no property says that there is none.</summary>
    public static Form<T?> OrNone<T>(this Form<T> form)
        where T : struct =>
        new LeftOutForm<T?>(
            Form.Of<T?, T>(form, value => value.GetValueOrDefault()),
            value => value.HasValue,
            isAnswer: true
        );
}
