using System.Text.Json.Nodes;
using Studio.Engine.Cure;
using Studio.Engine.Json;

namespace Studio.Engine.Time;

/// <summary>Writes the result of <c>calc time</c>; a moment that is not known is null, with its reason beside it.</summary>
internal static class TimeResultJson
{
    /// <summary>The result as JSON text.</summary>
    public static string Write(TimeResult result)
    {
        var whole = new JsonObject { ["layers"] = new JsonArray([.. result.Layers.Select(Layer)]) };
        (string, Moment)[] moments =
        [
            ("preparedAt", result.PreparedAt), ("demouldAt", result.DemouldAt), ("fullCureAt", result.FullCureAt), ("finishedAt", result.FinishedAt),
        ];
        Moments(whole, moments);
        whole["earliestOn"] = WallText.Write(result.EarliestOn);
        whole["promiseOn"] = WallText.Write(result.PromiseOn);
        whole["daysToSpare"] = result.DaysToSpare;
        Grounds(whole, moments);
        whole["steps"] = new JsonArray([.. result.Steps.Select(Step)]);
        whole["findings"] = CureResultJson.Findings(result.Findings);
        return whole.ToJsonString(Written.Options);
    }

    private static JsonObject Layer(TimeLayer layer)
    {
        var json = new JsonObject { ["name"] = layer.Name };
        (string, Moment)[] moments =
        [
            ("pourAt", layer.PourAt), ("pouredAt", layer.PouredAt), ("windowFrom", layer.WindowFrom), ("windowUntil", layer.WindowUntil),
            ("gelAt", layer.GelAt), ("demouldFrom", layer.DemouldFrom), ("fullCureAt", layer.FullCureAt),
        ];
        Moments(json, moments[..4]);
        json["missesWindow"] = layer.MissesWindow;
        Moments(json, moments[4..]);
        Grounds(json, moments);
        return json;
    }

    private static JsonObject Step(TimeStep step)
    {
        var json = new JsonObject { ["what"] = step.What, ["name"] = step.Name };
        (string, Moment)[] moments = [("from", step.From), ("until", step.Until)];
        Moments(json, moments);
        json["handsMinutes"] = step.HandsMinutes;
        json["done"] = step.Done;
        json["restsOn"] = step.From.RestsOn is { } basis ? CureResultJson.Basis(basis) : null;
        json["reason"] = step.From.Reason;
        return json;
    }

    private static void Moments(JsonObject json, (string Name, Moment Moment)[] moments)
    {
        foreach (var (name, moment) in moments)
        {
            json[name] = WallText.Write(moment.At);
        }
    }

    private static void Grounds(JsonObject json, (string Name, Moment Moment)[] moments)
    {
        var (restsOn, reasons) = (new JsonObject(), new JsonObject());
        foreach (var (name, moment) in moments)
        {
            if (moment.RestsOn is { } basis)
            {
                restsOn[name] = CureResultJson.Basis(basis);
            }

            if (moment.Reason is { } reason)
            {
                reasons[name] = reason;
            }
        }

        (json["restsOn"], json["reasons"]) = (restsOn, reasons);
    }
}
