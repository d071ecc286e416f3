using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Studio.Engine.Tests;

/// <summary>Puts JSON to a calculation as the command line does, and looks into the answer by path.</summary>
internal static class Ask
{
    public static JsonElement Result(string what, string json)
    {
        var answer = Calculations.Run(what, json);
        answer.ExitCode.ShouldBe(0, answer.Json);
        return JsonElement.Parse(answer.Json);
    }

    public static IReadOnlyList<InputError> Errors(string what, string json)
    {
        var answer = Calculations.Run(what, json);
        answer.ExitCode.ShouldBe(2, answer.Json);
        return [.. JsonElement.Parse(answer.Json).GetProperty("errors").EnumerateArray()
            .Select(e => new InputError(e.GetProperty("path").GetString()!, e.GetProperty("message").GetString()!))];
    }

    /// <summary>The element at a path such as <c>layers[1].toMm</c>.</summary>
    public static JsonElement At(this JsonElement element, string path) =>
        Steps(path).Aggregate(element, (e, step) => int.TryParse(step, CultureInfo.InvariantCulture, out var i) ? e[i] : e.GetProperty(step));

    public static double Number(this JsonElement element, string path) => element.At(path).GetDouble();

    public static string Text(this JsonElement element, string path) => element.At(path).GetString()!;

    public static string[] Codes(this JsonElement element, string layer) =>
        [.. element.At(layer + ".warnings").EnumerateArray().Select(w => w.GetProperty("code").GetString()!)];

    /// <summary>The JSON with one field set, added or, with null, taken out.</summary>
    public static string With(this string json, string path, string? value)
    {
        var root = JsonNode.Parse(json)!;
        var steps = Steps(path);
        var holder = steps[..^1].Aggregate(root, (node, step) => int.TryParse(step, CultureInfo.InvariantCulture, out var i) ? node[i]! : node[step]!);
        if (value is null)
        {
            holder.AsObject().Remove(steps[^1]);
            return root.ToJsonString();
        }

        // a placeholder, then the raw text: a number such as 1e999 must arrive as written
        const string Mark = "\"@here@\"";
        if (int.TryParse(steps[^1], CultureInfo.InvariantCulture, out var index))
        {
            holder[index] = JsonNode.Parse(Mark);
        }
        else
        {
            holder[steps[^1]] = JsonNode.Parse(Mark);
        }

        return root.ToJsonString().Replace(Mark, value, StringComparison.Ordinal);
    }

    /// <summary>Equal to nine digits.</summary>
    public static void ShouldBeNear(this double actual, double expected) =>
        actual.ShouldBe(expected, Math.Max(1e-12, Math.Abs(expected) * 1e-9));

    private static string[] Steps(string path) => path.Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal).Split('.', StringSplitOptions.RemoveEmptyEntries);
}
