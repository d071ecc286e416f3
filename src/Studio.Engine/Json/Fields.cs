using System.Globalization;
using System.Text.Json;

namespace Studio.Engine.Json;

/// <summary>
/// One JSON object being read field by field. Nothing throws: what cannot be read is reported with its path, and a stand-in (NaN, zero or an
/// empty text) is handed on, so that reading goes on to the next error.
/// </summary>
internal sealed partial class Fields
{
    // no list of a workroom is longer: a sensor that tells every second for ten days gives as much
    private const int MostEntries = 1_000_000;
    private const int LongestName = 200;

    private readonly Dictionary<string, JsonElement> values = new(StringComparer.Ordinal);
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);
    private readonly InputErrors errors;

    private Fields(string path, InputErrors errors) => (Path, this.errors) = (path, errors);

    private Fields(JsonElement element, string path, InputErrors errors)
        : this(path, errors)
    {
        foreach (var property in element.EnumerateObject())
        {
            if (Unicode.Name(property) is not { } name)
            {
                errors.Add(path, "A field's name holds half of a character (a lone surrogate), which no text can hold.");
            }
            else if (name.Length > LongestName)
            {
                errors.Add(path, FormattableString.Invariant($"A field's name is {name.Length} characters long; at most {LongestName} can be worked with. Shorten '{Choices.Short(name)}'."));
            }
            else if (!values.TryAdd(name, property.Value))
            {
                errors.Add(At(name), $"The field '{name}' is given twice. Give it once.");
            }
        }
    }

    /// <summary>Where this object stands in the whole, such as <c>layers[0]</c>; empty at the top.</summary>
    public string Path { get; }

    /// <summary>Names of all fields given.</summary>
    public IEnumerable<string> Names => values.Keys;

    /// <summary>The whole input as an object; null, with the error added, when it is none.</summary>
    public static Fields? Parse(string text, InputErrors errors)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            errors.Add("", "There is no input. Give one JSON object, in a file or on standard input.");
            return null;
        }

        try
        {
            using var document = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = Broken.Deepest });
            if (document.RootElement.ValueKind == JsonValueKind.Object)
            {
                return new Fields(document.RootElement.Clone(), "", errors);
            }

            errors.Add("", $"The input must be one JSON object in braces; {Kind(document.RootElement)} was given.");
        }
        catch (JsonException broken)
        {
            errors.Add("", Broken.At(text, broken));
        }
        catch (ArgumentException)
        {
            errors.Add("", "The input holds half of a character (a lone surrogate), which no text can hold.");
        }

        return null;
    }

    /// <summary>Path of a field of this object.</summary>
    public string At(string name) => Path.Length == 0 ? name : $"{Path}.{name}";

    /// <summary>A text that must be given; empty when it is not.</summary>
    public string Text(string name)
    {
        if (Required(name) is not { } value)
        {
            return "";
        }

        if (value.ValueKind == JsonValueKind.String)
        {
            return Unicode.Text(value) ?? Complain(name, "The text holds half of a character (a lone surrogate), which no text can hold.", "");
        }

        return Complain(name, $"Must be a text in quotation marks; {Kind(value)} was given.", "");
    }

    /// <summary>A text, or null when left out.</summary>
    public string? OptionalText(string name) => Given(name) is null ? null : Text(name);

    /// <summary>A number that must be given; NaN when it is not.</summary>
    public double Number(string name) => Required(name) is { } value ? Number(name, value) : double.NaN;

    /// <summary>A number or null when left out; NaN when what is given is no number.</summary>
    public double? OptionalNumber(string name) => Given(name) is { } value ? Number(name, value) : null;

    /// <summary>An exact decimal, as a number or as a text, that must be given; zero when it is not.</summary>
    public decimal Decimal(string name) => Required(name) is { } value ? Decimal(name, value) : 0;

    /// <summary>An exact decimal, as a number or as a text, or null when left out.</summary>
    public decimal? OptionalDecimal(string name) => Given(name) is { } value ? Decimal(name, value) : null;

    /// <summary>True or false; <paramref name="leftOut"/> when left out.</summary>
    public bool Flag(string name, bool leftOut = false) => Given(name) switch
    {
        null => leftOut,
        { ValueKind: JsonValueKind.True } => true,
        { ValueKind: JsonValueKind.False } => false,
        { } other => Complain(name, $"Must be true or false; {Kind(other)} was given.", otherwise: false),
    };

    /// <summary>An object that must be given.</summary>
    public T Object<T>(string name, Func<Fields, T> read) => Required(name) is { } value ? Inner(value, At(name), read) : read(Absent(At(name)));

    /// <summary>An object, or null when left out.</summary>
    public T? OptionalObject<T>(string name, Func<Fields, T> read)
        where T : class => Given(name) is { } value ? Inner(value, At(name), read) : null;

    /// <summary>A list of objects that must be given.</summary>
    public IReadOnlyList<T> List<T>(string name, Func<Fields, T> read) => Required(name) is { } value ? List(name, value, read) : [];

    /// <summary>A long list of objects: what <paramref name="plain"/> can read at once is not looked at field by field.</summary>
    public IReadOnlyList<T> List<T>(string name, Func<JsonElement, T?> plain, Func<Fields, T> read)
        where T : class => Required(name) is not { } value ? []
        : Listed(value) ? [.. value.EnumerateArray().Select((e, i) => plain(e) ?? Inner(e, $"{At(name)}[{i}]", read))]
        : List(name, value, read);

    /// <summary>A list of objects; empty when left out.</summary>
    public IReadOnlyList<T> OptionalList<T>(string name, Func<Fields, T> read) => Given(name) is { } value ? List(name, value, read) : [];

    /// <summary>An object whose field names are the caller's own ids; it must be given.</summary>
    public IReadOnlyDictionary<string, T> Map<T>(string name, Func<Fields, T> read) =>
        Object(name, inner => inner.values.ToDictionary(v => v.Key, v => Accept(inner, v.Key, read), StringComparer.Ordinal));

    /// <summary>Call last: every field that nobody asked for is refused by name.</summary>
    public void NothingElse()
    {
        foreach (var name in values.Keys.Where(n => !asked.Contains(n)))
        {
            errors.Add(At(name), $"There is no field '{name}' here. There are: {string.Join(", ", asked)}.");
        }
    }

    // reads with stand-ins only; whoever calls has already said what is wrong
    private static Fields Absent(string path) => new(path, new InputErrors());

    private static T Accept<T>(Fields inner, string name, Func<Fields, T> read)
    {
        inner.asked.Add(name);
        return inner.Inner(inner.values[name], inner.At(name), read);
    }

    private static string Kind(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => $"the text \"{Short(Unicode.Text(value) ?? "")}\"",
        JsonValueKind.Number => "the number " + Short(value.GetRawText()),
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => "null",
    };

    private static string Short(string text) => text.Length <= 40 ? text : text[..40].TrimEnd('\uD800', '\uDBFF') + "…";

    private T Inner<T>(JsonElement value, string path, Func<Fields, T> read)
    {
        if (value.ValueKind == JsonValueKind.Object)
        {
            return read(new Fields(value, path, errors));
        }

        errors.Add(path, $"Must be an object in braces; {Kind(value)} was given.");
        return read(Absent(path));
    }

    private IReadOnlyList<T> List<T>(string name, JsonElement value, Func<Fields, T> read) =>
        Listed(value)
            ? [.. value.EnumerateArray().Select((e, i) => Inner(e, $"{At(name)}[{i}]", read))]
            : Complain<IReadOnlyList<T>>(name, NoList(value), []);

    private static bool Listed(JsonElement value) => value.ValueKind == JsonValueKind.Array && value.GetArrayLength() <= MostEntries;

    private static string NoList(JsonElement value) => value.ValueKind == JsonValueKind.Array
        ? FormattableString.Invariant($"The list has {value.GetArrayLength()} entries; at most {MostEntries} can be worked with.")
        : $"Must be a list in square brackets; {Kind(value)} was given.";

    private JsonElement? Given(string name)
    {
        asked.Add(name);
        if (!values.TryGetValue(name, out var value))
        {
            return null;
        }

        return value;
    }

    private JsonElement? Required(string name)
    {
        var value = Given(name);
        if (value is null)
        {
            errors.Add(At(name), $"The field '{name}' is missing.");
        }

        return value;
    }

    private double Number(string name, JsonElement value)
    {
        if (value.ValueKind != JsonValueKind.Number)
        {
            return Complain(name, $"Must be a number, without quotation marks or unit; {Kind(value)} was given.", double.NaN);
        }

        return value.TryGetDouble(out var number) && double.IsFinite(number)
            ? number
            : Complain(name, $"The number {Short(value.GetRawText())} is too large to work with.", double.NaN);
    }

    private decimal Decimal(string name, JsonElement value)
    {
        var text = value.ValueKind switch
        {
            JsonValueKind.Number => value.GetRawText(),
            JsonValueKind.String => Unicode.Text(value) ?? "",
            _ => null,
        };
        var style = value.ValueKind == JsonValueKind.Number ? NumberStyles.Float : NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        return decimal.TryParse(text, style, CultureInfo.InvariantCulture, out var number)
            ? number
            : Complain(name, $"Must be a decimal number such as \"12.50\", with a point and without unit, spaces or thousands marks, and not too large; {Kind(value)} was given.", 0m);
    }

    private T Complain<T>(string name, string message, T otherwise)
    {
        errors.Add(At(name), message);
        return otherwise;
    }
}
