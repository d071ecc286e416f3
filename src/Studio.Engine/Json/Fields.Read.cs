using System.Globalization;
using System.Text.Json;

namespace Studio.Engine.Json;

/// <summary>Reads a text that stands for something else; false where it does not.</summary>
internal delegate bool TryRead<T>(string text, out T value);

/// <content>Texts that stand for a day, a time or a word of a short list, and whole numbers.</content>
internal sealed partial class Fields
{
    /// <summary>True where the field is given as an object in braces.</summary>
    public bool HoldsObject(string name) => values.TryGetValue(name, out var value) && value.ValueKind == JsonValueKind.Object;

    /// <summary>A text that must be given and be readable; the type's default when it is not, and <paramref name="must"/> is said.</summary>
    public T Read<T>(string name, TryRead<T> read, string must)
        where T : struct => Required(name) is { } value ? Read(name, value, read, must) : default;

    /// <summary>A readable text, or null when left out.</summary>
    public T? OptionalRead<T>(string name, TryRead<T> read, string must)
        where T : struct => Given(name) is { } value ? Read(name, value, read, must) : null;

    /// <summary>A list of readable texts that must be given.</summary>
    public IReadOnlyList<T> ReadList<T>(string name, TryRead<T> read, string must)
        where T : struct => Required(name) is { } value ? ReadList(name, value, read, must) : [];

    /// <summary>A list of readable texts; empty when left out.</summary>
    public IReadOnlyList<T> OptionalReadList<T>(string name, TryRead<T> read, string must)
        where T : struct => Given(name) is { } value ? ReadList(name, value, read, must) : [];

    /// <summary>A whole number, or null when left out; zero when what is given is none.</summary>
    public int? OptionalWhole(string name) => OptionalNumber(name) switch
    {
        null => null,
        double.NaN => 0, // said when it was read
        { } number => Whole(name, number),
    };

    private int Whole(string name, double number) => Math.Abs(number) <= int.MaxValue && Math.Truncate(number).Equals(number)
        ? (int)number
        : Complain(name, string.Create(CultureInfo.InvariantCulture, $"Must be a whole number; {number} was given."), 0);

    private IReadOnlyList<T> ReadList<T>(string name, JsonElement value, TryRead<T> read, string must)
        where T : struct => Listed(value)
            ? [.. value.EnumerateArray().Select((e, i) => Read($"{name}[{i}]", e, read, must))]
            : Complain<IReadOnlyList<T>>(name, NoList(value), []);

    private T Read<T>(string name, JsonElement value, TryRead<T> read, string must)
        where T : struct => value.ValueKind == JsonValueKind.String && Unicode.Text(value) is { } text && read(text, out var found)
            ? found
            : Complain<T>(name, $"Must be {must}; {Kind(value)} was given.", default);
}
