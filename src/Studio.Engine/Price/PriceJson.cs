using System.Globalization;
using System.Text.Json.Nodes;
using Studio.Engine.Json;

namespace Studio.Engine.Price;

/// <summary>Reads the input of <c>calc price</c> and writes its result; money travels as decimal text with the currency's digits.</summary>
internal static class PriceJson
{
    /// <summary>JSON text to a result or every error at once.</summary>
    public static Outcome<PriceResult> Run(string text)
    {
        var errors = new InputErrors();
        return Fields.Parse(text, errors) is { } fields ? PriceCalculation.Run(Read(fields), errors) : Outcome<PriceResult>.Refused(errors.All);
    }

    /// <summary>The result as JSON text.</summary>
    public static string Write(PriceResult result)
    {
        var format = "F" + (Currencies.MinorDigits(result.Currency) ?? 2).ToString(CultureInfo.InvariantCulture);
        string Money(decimal amount) => amount.ToString(format, CultureInfo.InvariantCulture);
        JsonArray Lines(IEnumerable<CostLine> lines) => [.. lines.Select(l => (JsonNode)new JsonObject { ["name"] = l.Name, ["cost"] = Money(l.Cost) })];
        return new JsonObject
        {
            ["currency"] = result.Currency,
            ["materials"] = Lines(result.Materials),
            ["labour"] = Lines(result.Labour),
            ["equipment"] = Lines(result.Equipment),
            ["overhead"] = Money(result.Overhead),
            ["making"] = Money(result.Making),
            ["remakes"] = Money(result.Remakes),
            ["packaging"] = Money(result.Packaging),
            ["delivery"] = Money(result.Delivery),
            ["cost"] = Money(result.Cost),
            ["netPrice"] = Money(result.NetPrice),
            ["tax"] = Money(result.Tax),
            ["total"] = Money(result.Total),
            ["fee"] = Money(result.Fee),
            ["profit"] = Money(result.Profit),
            ["achievedMarginPercent"] = Shortest(result.AchievedMarginPercent),
            ["breakEvenTotal"] = Money(result.BreakEvenTotal),
            ["deposit"] = Money(result.Deposit),
            ["balance"] = Money(result.Balance),
        }.ToJsonString(Written.Options);
    }

    // dividing by one with many zeros drops a decimal's trailing zeros
    private static decimal Shortest(decimal number) => number / 1.0000000000000000000000000000m;

    private static PriceInput Read(Fields fields)
    {
        var input = new PriceInput
        {
            Currency = fields.Text("currency"),
            Materials = fields.OptionalList("materials", Material),
            Labour = fields.OptionalList("labour", Labour),
            Equipment = fields.OptionalList("equipment", Equipment),
            Overhead = fields.OptionalObject("overhead", Overhead),
            RemakePercent = fields.OptionalDecimal("remakePercent") ?? 0,
            Packaging = fields.OptionalDecimal("packaging") ?? 0,
            Delivery = fields.OptionalDecimal("delivery") ?? 0,
            Fee = fields.OptionalObject("fee", Fee),
            MarginPercent = fields.OptionalDecimal("marginPercent") ?? 0,
            TaxPercent = fields.OptionalDecimal("taxPercent") ?? 0,
            RoundTo = fields.OptionalDecimal("roundTo"),
            DepositPercent = fields.OptionalDecimal("depositPercent") ?? 0,
        };
        fields.NothingElse();
        return input;
    }

    private static MaterialLine Material(Fields fields)
    {
        var line = new MaterialLine(
            fields.Text("name"), fields.Decimal("used"), fields.Decimal("packSize"), fields.Decimal("packPrice"), fields.OptionalDecimal("yieldPercent") ?? 100);
        fields.NothingElse();
        return line;
    }

    private static LabourLine Labour(Fields fields)
    {
        var line = new LabourLine(fields.Text("name"), fields.Decimal("minutes"), fields.Decimal("ratePerHour"));
        fields.NothingElse();
        return line;
    }

    private static EquipmentLine Equipment(Fields fields)
    {
        var line = new EquipmentLine(fields.Text("name"), fields.Decimal("hours"), fields.Decimal("ratePerHour"));
        fields.NothingElse();
        return line;
    }

    private static OverheadSpec Overhead(Fields fields)
    {
        var overhead = new OverheadSpec(fields.Decimal("monthly"), fields.Decimal("benchHoursPerMonth"));
        fields.NothingElse();
        return overhead;
    }

    private static FeeSpec Fee(Fields fields)
    {
        var fee = new FeeSpec(fields.OptionalDecimal("percent") ?? 0, fields.OptionalDecimal("fixed") ?? 0);
        fields.NothingElse();
        return fee;
    }
}
