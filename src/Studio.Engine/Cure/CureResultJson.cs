using System.Text.Json.Nodes;
using Studio.Engine.Json;

namespace Studio.Engine.Cure;

/// <summary>Writes the result of <c>calc cure</c>; a time that is not there is null, with its reason beside it.</summary>
internal static class CureResultJson
{
    /// <summary>The result as JSON text.</summary>
    public static string Write(CureResult result)
    {
        var whole = new JsonObject { ["layers"] = new JsonArray([.. result.Layers.Select(Layer)]) };
        (string, Milestone)[] times = [("demouldHours", result.Demould)];
        Times(whole, times);
        Grounds(whole, times);
        whole["findings"] = Findings(result.Findings);
        return whole.ToJsonString(Written.Options);
    }

    private static JsonObject Layer(CureLayerResult layer)
    {
        var cure = layer.Cure;
        var json = new JsonObject { ["name"] = cure.Name, ["pouredAtHours"] = layer.PouredAtHours };
        (string, Milestone)[] times =
        [
            ("gelHours", cure.Gel), ("nextPourFromHours", cure.NextPourFrom), ("nextPourUntilHours", cure.NextPourUntil),
            ("demouldHours", cure.Demould), ("fullCureHours", cure.FullCure),
        ];
        Times(json, times);
        json["conversion"] = layer.AtEnd?.Conversion;
        json["glassTransitionC"] = layer.AtEnd?.GlassTransitionC;
        Grounds(json, times, layer.NoConversion);
        json["curve"] = new JsonArray([.. layer.Curve.Select(Point)]);
        json["findings"] = Findings(cure.Findings);
        return json;
    }

    private static void Times(JsonObject json, (string Name, Milestone Time)[] times)
    {
        foreach (var (name, time) in times)
        {
            json[name] = time.AtHours;
        }
    }

    // what each time rests on, and why one is missing
    private static void Grounds(JsonObject json, (string Name, Milestone Time)[] times, string? noConversion = null)
    {
        var (restsOn, reasons) = (new JsonObject(), new JsonObject());
        foreach (var (name, time) in times)
        {
            if (time.RestsOn is { } basis)
            {
                var rests = Basis(basis);
                rests["by"] = By(time.By);
                restsOn[name] = rests;
            }

            if (time.Reason is { } reason)
            {
                reasons[name] = reason;
            }
        }

        if (noConversion is not null)
        {
            reasons["conversion"] = noConversion;
        }

        (json["restsOn"], json["reasons"]) = (restsOn, reasons);
    }

    /// <summary>What a time rests on, the same for <c>calc time</c>.</summary>
    internal static JsonObject Basis(RestsOn basis) => new() { ["kind"] = Kind(basis.Kind), ["hours"] = basis.AtHours, ["celsius"] = basis.Celsius };

    private static string By(DecidedBy by) => by switch
    {
        DecidedBy.Sheet => "sheet",
        DecidedBy.Kinetics => "kinetics",
        DecidedBy.Fit => "fit",
        DecidedBy.Heat => "heat",
        _ => throw new InvalidOperationException($"No word for {by}."),
    };

    private static string Kind(RestsOnKind kind) => kind switch
    {
        RestsOnKind.Reading => "reading",
        RestsOnKind.Held => "held",
        RestsOnKind.Assumed => "assumed",
        _ => throw new InvalidOperationException($"No word for {kind}."),
    };

    private static JsonNode Point(CurePoint point) => new JsonObject
    {
        ["hours"] = point.Hours,
        ["celsius"] = point.Celsius,
        ["conversion"] = point.Conversion,
        ["glassTransitionC"] = point.GlassTransitionC,
    };

    /// <summary>Findings as every calculation of cure and heat writes them.</summary>
    internal static JsonArray Findings(IReadOnlyList<Finding> findings) =>
        [.. findings.Select(f => (JsonNode)new JsonObject
        {
            ["code"] = f.Code,
            ["severity"] = f.Severity switch { Severity.Stop => "stop", Severity.Warn => "warn", _ => "note" },
            ["path"] = f.Path,
            ["message"] = f.Message,
            ["source"] = f.Source,
        })];
}
