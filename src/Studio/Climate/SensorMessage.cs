using System.Globalization;
using System.Text.Json;
using Studio.Engine;

namespace Studio.Climate;

/// <summary>One reading as a sensor sent it.</summary>
/// <param name="Index">Its place in what was sent, from 0.</param>
/// <param name="Celsius">As sent, turned into °C.</param>
/// <param name="HumidityPercent">Relative humidity [%].</param>
/// <param name="At">When it was measured [UTC]; null where it does not say.</param>
/// <param name="LocalAt">When it was measured on the studio's clock, where it names no zone.</param>
public sealed record SensorMessage(int Index, double Celsius, double? HumidityPercent = null, DateTime? At = null, DateTime? LocalAt = null)
{
    /// <summary>A temperature in °F as °C.</summary>
    public static double OfFahrenheit(double fahrenheit) => (fahrenheit - 32) / 1.8;
}

/// <summary>Reads the body of <c>POST /api/readings</c>: one reading or a list of them.</summary>
internal static class SensorMessages
{
    /// <summary>More than this belongs into several calls.</summary>
    internal const int Most = 10_000;

    private static readonly string[] Known = ["celsius", "fahrenheit", "humidityPercent", "at"];

    /// <summary>What can be used, and everything that cannot, each with its path.</summary>
    internal static (IReadOnlyList<SensorMessage> Messages, IReadOnlyList<InputError> Errors) Read(string body)
    {
        var errors = new List<InputError>();
        var messages = new List<SensorMessage>();
        try
        {
            using var json = JsonDocument.Parse(body);
            if (json.RootElement.ValueKind is JsonValueKind.Array)
            {
                if (json.RootElement.GetArrayLength() is 0 or > Most)
                {
                    return ([], [new("", FormattableString.Invariant($"A list holds 1 to {Most} readings. Send the rest in further calls."))]);
                }

                foreach (var (index, one) in json.RootElement.EnumerateArray().Index())
                {
                    Take(one, index, FormattableString.Invariant($"[{index}]"));
                }
            }
            else
            {
                Take(json.RootElement, 0, "");
            }
        }
        catch (InvalidOperationException)
        {
            // half of a pair of surrogates in a name or a text: JSON by its grammar, and no text
            return ([], [new("", "There are letters in it that no text has. Send {\"celsius\": 19.5} or a list of such readings.")]);
        }
        catch (JsonException wrong)
        {
            errors.Add(new("", $"This is not JSON: {wrong.Message} Send {{\"celsius\": 19.5}} or a list of such readings."));
        }

        return (messages, errors);

        void Take(JsonElement one, int index, string path)
        {
            if (One(one, index, path, errors) is { } message)
            {
                messages.Add(message);
            }
        }
    }

    private static SensorMessage? One(JsonElement one, int index, string path, List<InputError> errors)
    {
        if (one.ValueKind is not JsonValueKind.Object)
        {
            errors.Add(new(path, "A reading is an object such as {\"celsius\": 19.5, \"humidityPercent\": 48}."));
            return null;
        }

        var before = errors.Count;
        var at = path.Length == 0 ? "" : path + ".";
        foreach (var field in one.EnumerateObject().Where(f => !Known.Contains(f.Name, StringComparer.Ordinal)))
        {
            errors.Add(new(at + field.Name, $"There is no field '{field.Name}'. There are: {string.Join(", ", Known)}."));
        }

        var (celsius, fahrenheit, humid) = (Number("celsius"), Number("fahrenheit"), Number("humidityPercent"));
        if (errors.Count == before && celsius is null == fahrenheit is null)
        {
            errors.Add(new(at + "celsius", "Give the temperature once: either celsius or fahrenheit."));
        }

        if (humid is { } h && h is < 0 or > 100)
        {
            errors.Add(new(at + "humidityPercent", "Relative humidity lies between 0 and 100 %."));
        }

        var (utc, local) = When(one, at + "at", errors);
        if (path.Length > 0 && (utc, local) is (null, null) && errors.Count == before)
        {
            errors.Add(new(at + "at", "In a list each reading says when it was measured, such as \"2026-11-25T16:00:00Z\"."));
        }

        return errors.Count > before ? null : new(index, celsius ?? SensorMessage.OfFahrenheit(fahrenheit!.Value), humid, utc, local);

        double? Number(string name)
        {
            if (!one.TryGetProperty(name, out var value) || value.ValueKind is JsonValueKind.Null)
            {
                return null;
            }

            if (value.ValueKind is JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number))
            {
                return number;
            }

            errors.Add(new(at + name, "Must be a number, with a dot for the decimals and without quotes."));
            return null;
        }
    }

    private static (DateTime? Utc, DateTime? Local) When(JsonElement one, string path, List<InputError> errors)
    {
        if (!one.TryGetProperty("at", out var value) || value.ValueKind is JsonValueKind.Null)
        {
            return default;
        }

        if (value.ValueKind is JsonValueKind.String && value.GetString() is { Length: >= 16 } text && text[4] == '-' && text[7] == '-' && DateTime.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var said) && said.Year is > 2000 and < 2200)
        {
            return said.Kind is DateTimeKind.Unspecified ? (null, said) : (said.ToUniversalTime(), null);
        }

        errors.Add(new(path, "Must be a time such as \"2026-11-25T16:00:00Z\". Without a zone it is taken as the studio's own clock; left out, as now."));
        return default;
    }
}
