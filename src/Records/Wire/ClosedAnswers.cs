using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Ramwright.Records.Wire;

/// <summary>
/// A closed answer (an abstract record with its cases nested in it) is stored with the key <c>case</c>: the case's name in lower case with
/// hyphens, or the older name it was first stored under where the type has been renamed since.
/// </summary>
internal static class ClosedAnswers
{
    /// <summary>First stored names of cases that were renamed later.</summary>
    private static readonly Dictionary<Type, string> FirstNames = [];

    public static void Describe(JsonTypeInfo info)
    {
        if (info.Kind != JsonTypeInfoKind.Object || !info.Type.IsAbstract)
            return;
        var cases = info.Type.GetNestedTypes(BindingFlags.Public).Where(t => t.IsSealed && t.IsSubclassOf(info.Type)).ToArray();
        if (cases.Length == 0)
            return;
        info.PolymorphismOptions = new()
        {
            TypeDiscriminatorPropertyName = "case",
            UnknownDerivedTypeHandling = JsonUnknownDerivedTypeHandling.FailSerialization,
        };
        foreach (var type in cases)
            info.PolymorphismOptions.DerivedTypes.Add(new JsonDerivedType(type, FirstNames.GetValueOrDefault(type) ?? JsonNamingPolicy.KebabCaseLower.ConvertName(type.Name)));
    }
}
