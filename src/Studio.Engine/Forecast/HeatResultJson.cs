using System.Text.Json;
using System.Text.Json.Nodes;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Json;

namespace Studio.Engine.Forecast;

/// <summary>Writes the result of <c>calc heat</c>; an interval is a pair, its 5 and its 95 % bound.</summary>
internal static class HeatResultJson
{
    /// <summary>The result as JSON text.</summary>
    public static string Write(HeatResult result)
    {
        var whole = new JsonObject
        {
            ["layers"] = new JsonArray([.. result.Layers.Select(Layer)]),
            ["model"] = result.Model,
            ["energyBalance"] = result.EnergyBalance,
        };
        if (result.Fit.Count > 0)
        {
            whole["fit"] = new JsonObject(result.Fit.Select(f => KeyValuePair.Create<string, JsonNode?>(f.Key, Fit(f.Value))));
        }

        whole["piece"] = Piece(result.Layers);
        whole["findings"] = CureResultJson.Findings(result.Findings);
        return whole.ToJsonString(Written.Options);
    }

    // the hottest place of the whole piece, and when [h on the room's scale]
    private static JsonObject Piece(IReadOnlyList<HeatLayerResult> layers)
    {
        var hottest = Enumerable.Range(0, layers.Count).MaxBy(i => layers[i].Heat.PeakC);
        var heat = layers[hottest].Heat;
        return new JsonObject
        {
            ["layer"] = hottest,
            ["peakCelsius"] = Celsius(heat.PeakC),
            ["peakAtHours"] = layers[hottest].PouredAtHours + heat.PeakAfterHours,
            ["peakHeightMm"] = heat.PeakHeightMm,
        };
    }

    private static JsonObject Layer(HeatLayerResult layer)
    {
        var heat = layer.Heat.Best;
        var json = new JsonObject();
        Put(json, "name", layer.Name);
        if (layer.Heat.RunAway)
        {
            json["runaway"] = true;
            json["adiabaticCelsius"] = layer.Heat.AdiabaticC;
        }

        json["peakCelsius"] = Celsius(heat.PeakCelsius);
        json["peakAfterHours"] = heat.PeakAfterHours;
        json["peakHeightMm"] = heat.PeakHeightMm;
        json["peakBeforeNextPourCelsius"] = Celsius(heat.PeakBeforeNextPourCelsius);
        json["peakBeforeNextPourAfterHours"] = heat.PeakBeforeNextPourAfterHours;
        Put(json, "firstGelAfterHours", heat.FirstGelAfterHours);
        Put(json, "lastGelAfterHours", heat.LastGelAfterHours);
        json["conversion"] = new JsonObject { ["min"] = heat.LeastConversion, ["mean"] = heat.MeanConversion };
        json["mouldFacePeakCelsius"] = Celsius(heat.MouldFacePeakCelsius);
        if (layer.Heat.Intervals is { } intervals)
        {
            json["interval"] = Interval(intervals);
        }

        json["curve"] = new JsonArray([.. heat.Curve.Select(m =>
            (JsonNode)new JsonObject { ["afterHours"] = m.AfterHours, ["hottestCelsius"] = Celsius(m.HottestC), ["surfaceCelsius"] = Celsius(m.SurfaceC) })]);
        json["findings"] = CureResultJson.Findings(layer.Findings);
        return json;
    }

    // above the bound of run-away a figure would be the grid's, not the resin's; a layer that touches no mould has no face
    private static JsonValue? Celsius(double celsius) => celsius <= HeatFindings.RunawayC && double.IsFinite(celsius) ? JsonValue.Create(celsius) : null;

    private static JsonObject Interval(ForecastIntervals of)
    {
        var json = new JsonObject { ["peakCelsius"] = Temperatures(of.PeakC), ["peakAfterHours"] = Pair(of.PeakAfterHours) };
        Put(json, "firstGelAfterHours", Pair(of.FirstGelAfterHours));
        Put(json, "lastGelAfterHours", Pair(of.LastGelAfterHours));
        json["conversion"] = new JsonObject { ["min"] = Pair(of.LeastConversion), ["mean"] = Pair(of.MeanConversion) };
        json["mouldFacePeakCelsius"] = Temperatures(of.FaceC);
        return json;
    }

    private static JsonArray Temperatures(FitInterval of) => [Celsius(of.From), Celsius(of.To)];

    private static JsonObject Fit(ResinFit fit) => new()
    {
        ["kinetics"] = JsonSerializer.SerializeToNode(fit.Best.Kinetics, Written.Options),
        ["densityKgPerM3"] = fit.Best.DensityKgPerM3,
        ["heatCapacityJPerKgK"] = fit.Best.HeatCapacityJPerKgK,
        ["conductivityWPerMK"] = fit.Best.ConductivityWPerMK,
        ["filmFactor"] = fit.Best.FilmFactor,
        ["misfit"] = fit.Misfit,
        ["identifiable"] = new JsonArray([.. fit.Identifiable.Select(n => (JsonNode)n)]),
        ["known"] = new JsonArray([.. fit.Known.Select(k => (JsonNode)new JsonObject { ["name"] = k.Name, ["value"] = k.Value, ["interval"] = Pair(k.Interval), ["restsOn"] = k.RestsOn })]),
    };

    private static JsonArray? Pair(FitInterval? interval) => interval is null ? null : [interval.From, interval.To];

    private static void Put(JsonObject json, string name, JsonNode? value)
    {
        if (value is not null)
        {
            json[name] = value;
        }
    }
}
