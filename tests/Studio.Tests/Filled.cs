using System.Collections;
using System.Reflection;
using System.Text.Json;

namespace Studio.Tests;

/// <summary>Makes an object whose every property says something, and compares two such by their properties.</summary>
internal static class Filled
{
    /// <summary>One of a type with every property set to something that is not its default; what must be something particular is set by <paramref name="particular"/>.</summary>
    public static T Of<T>(Action<T>? particular = null)
        where T : class
    {
        var made = (T)Make(typeof(T), typeof(T).Name, 1)!;
        particular?.Invoke(made);
        return made;
    }

    /// <summary>The properties that a person or a program can set.</summary>
    public static IEnumerable<PropertyInfo> Settable(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p is { CanRead: true, SetMethod.IsPublic: true } && p.GetIndexParameters().Length == 0);

    /// <summary>Names of the properties in which two objects of a type differ.</summary>
    public static IReadOnlyList<string> Differing(object one, object other) =>
        [.. Settable(one.GetType()).Where(p => Text(p.GetValue(one)) != Text(p.GetValue(other))).Select(p => p.Name)];

    private static string Text(object? value) => value is null ? "null" : JsonSerializer.Serialize(value, value.GetType());

    private static object? Make(Type type, string name, int seed)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        if (bare.IsEnum)
        {
            return Enum.GetValues(bare).Cast<object>().Last();
        }

        return bare switch
        {
            _ when bare == typeof(string) => FormattableString.Invariant($"{name} {seed}"),
            _ when bare == typeof(int) => 10 + seed,
            _ when bare == typeof(double) => 10.0 + seed,
            _ when bare == typeof(decimal) => 10m + seed,
            _ when bare == typeof(bool) => true,
            _ when bare == typeof(DateTime) => new DateTime(2026, 3, 2, 9, 0, 0, DateTimeKind.Utc).AddHours(seed),
            _ when bare == typeof(DateOnly) => new DateOnly(2026, 3, 2).AddDays(seed),
            _ when bare.IsGenericType && bare.IsAssignableTo(typeof(IDictionary)) => Dictionary(bare, name, seed),
            _ when bare.IsGenericType && bare.IsAssignableTo(typeof(IEnumerable)) => List(bare, name, seed),
            _ when bare.IsClass && !bare.IsAbstract => Object(bare, seed),
            _ => throw new NotSupportedException($"{name} is a {bare.Name}, of which no value is made here."),
        };
    }

    private static object Dictionary(Type type, string name, int seed)
    {
        var made = (IDictionary)Activator.CreateInstance(type)!;
        made.Add(Make(type.GetGenericArguments()[0], name, seed)!, Make(type.GetGenericArguments()[1], name, seed));
        return made;
    }

    private static object List(Type type, string name, int seed)
    {
        var made = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(type.GetGenericArguments()[0]))!;
        made.Add(Make(type.GetGenericArguments()[0], name, seed));
        return made;
    }

    private static object Object(Type type, int seed)
    {
        var constructor = type.GetConstructors().Where(c => c.GetParameters().All(p => p.ParameterType != type)).MaxBy(c => c.GetParameters().Length)
            ?? throw new NotSupportedException($"A {type.Name} cannot be made here.");
        var made = constructor.Invoke([.. constructor.GetParameters().Select((p, i) => Make(p.ParameterType, p.Name!, seed + i))]);
        foreach (var (property, i) in Settable(type).Select((p, i) => (p, i)))
        {
            if (!property.PropertyType.IsClass || property.PropertyType == typeof(string) || property.PropertyType.IsGenericType || property.PropertyType.GetConstructors().Length > 0)
            {
                property.SetValue(made, Make(property.PropertyType, property.Name, seed + i));
            }
        }

        return made;
    }
}
