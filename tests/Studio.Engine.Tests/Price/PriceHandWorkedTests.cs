using Studio.Engine.Price;

namespace Studio.Engine.Tests.Price;

public sealed class PriceHandWorkedTests
{
    // an invented piece, small enough to work on paper; the comments are the working
    private const string Piece = """
        {
          "currency": "GBP",
          "materials": [{ "name": "clear resin", "used": 400, "packSize": 1000, "packPrice": "30.00", "yieldPercent": 80 }],
          "labour": [{ "name": "casting", "minutes": 90, "ratePerHour": "20.00" }],
          "equipment": [{ "name": "pressure pot", "hours": 5, "ratePerHour": "0.40" }],
          "overhead": { "monthly": "300.00", "benchHoursPerMonth": 60 },
          "remakePercent": 20, "packaging": "3.00", "delivery": "5.50", "fee": { "percent": 2, "fixed": "0.25" },
          "marginPercent": 30, "taxPercent": 20, "roundTo": "0.50", "depositPercent": 50
        }
        """;

    [Theory]
    [InlineData("materials[0].cost", "15.00")] // 400/1000 x 30 / 0.80
    [InlineData("labour[0].cost", "30.00")] // 1.5 h x 20
    [InlineData("equipment[0].cost", "2.00")]
    [InlineData("overhead", "7.50")] // 1.5 h x 300/60
    [InlineData("making", "54.50")]
    [InlineData("remakes", "13.63")] // 54.5 x 0.2/0.8 = 13.625, half away from zero
    [InlineData("packaging", "3.00")]
    [InlineData("delivery", "5.50")]
    [InlineData("cost", "76.63")] // 76.625
    [InlineData("total", "136.50")] // (76.625 + 0.25)/(1 - 0.30 - 0.02 x 1.2) x 1.2 = 136.464..., up to 0.50
    [InlineData("netPrice", "113.75")] // 136.50/1.2
    [InlineData("tax", "22.75")]
    [InlineData("fee", "2.98")] // 0.02 x 136.50 + 0.25
    [InlineData("profit", "34.15")] // 113.75 - 76.625 - 2.98 = 34.145
    [InlineData("breakEvenTotal", "94.52")] // 76.875 x 1.2/(1 - 0.024) = 94.518...
    [InlineData("deposit", "68.25")]
    [InlineData("balance", "68.25")]
    [InlineData("currency", "GBP")]
    public void Amount(string path, string amount) => Ask.Result("price", Piece).Text(path).ShouldBe(amount);

    [Fact]
    public void Achieved_margin_is_the_share_of_the_net_price_that_stays() =>
        Ask.Result("price", Piece).Number("achievedMarginPercent").ShouldBeNear(34.145 / 113.75 * 100);

    [Fact]
    public void Amounts_may_come_as_numbers_and_shares_as_text()
    {
        var other = Piece.With("packaging", "3").With("materials[0].packPrice", "30.00").With("remakePercent", "\"20\"").With("labour[0].minutes", "\"90\"").With("fee.fixed", "2.5e-1");
        Calculations.Run("price", other).Json.ShouldBe(Calculations.Run("price", Piece).Json);
    }

    [Fact]
    public void Everything_but_the_currency_may_be_left_out()
    {
        var result = Ask.Result("price", """{ "currency": "EUR" }""");
        result.Text("total").ShouldBe("0.00");
        result.Number("achievedMarginPercent").ShouldBe(0);
        result.At("materials").GetArrayLength().ShouldBe(0);
    }

    [Theory]
    [InlineData("JPY", "1235")] // no minor unit: 1234.5 is rounded up to a whole yen
    [InlineData("GBP", "1234.50")]
    [InlineData("KWD", "1234.500")]
    [InlineData("CLF", "1234.5000")]
    public void Amounts_carry_the_digits_of_their_currency(string currency, string total) =>
        Ask.Result("price", $$"""{ "currency": "{{currency}}", "packaging": "1234.5" }""").Text("total").ShouldBe(total);

    [Theory] // thirds and sevenths leave dust in the last digits, and dust must not lift a price by a penny
    [InlineData("3", "1", "2.00", "2.00")]
    [InlineData("7", "3", "14.00", "14.00")]
    [InlineData("3", "1", "2000000.00", "2000000.00")]
    [InlineData("3", "1", "123456789.00", "123456789.00")]
    public void Dust_does_not_lift_a_price(string packSize, string used, string packPrice, string total)
    {
        var lines = string.Join(',', Enumerable.Repeat($$"""{ "name": "part", "used": {{used}}, "packSize": {{packSize}}, "packPrice": "{{packPrice}}" }""", int.Parse(packSize, System.Globalization.CultureInfo.InvariantCulture)));
        var expected = decimal.Parse(total, System.Globalization.CultureInfo.InvariantCulture) * int.Parse(used, System.Globalization.CultureInfo.InvariantCulture);
        Ask.Result("price", $$"""{ "currency": "GBP", "materials": [{{lines}}] }""").Text("total").ShouldBe(expected.ToString("F2", System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("2.0000000000000000000000000001", "2.00")] // the twenty-eighth digit is dust
    [InlineData("2.0000000001", "2.01")] // this is not
    [InlineData("2.00", "2.00")]
    [InlineData("2.001", "2.01")]
    public void The_total_is_rounded_up(string packaging, string total) =>
        Ask.Result("price", $$"""{ "currency": "GBP", "packaging": "{{packaging}}" }""").Text("total").ShouldBe(total);

    [Theory]
    [InlineData("0.05", "10.05")]
    [InlineData("1", "11.00")]
    [InlineData("5.00", "15.00")]
    [InlineData("0.01", "10.01")]
    [InlineData("10.01", "10.01")]
    public void The_total_is_a_multiple_of_the_step(string roundTo, string total) =>
        Ask.Result("price", $$"""{ "currency": "GBP", "packaging": "10.01", "roundTo": "{{roundTo}}" }""").Text("total").ShouldBe(total);

    // in every case below margin = tax = fee = 0 unless said, so that the handbook's one rule stands alone

    [Theory] // price = cost/(1 - margin): cost 60 at 40 % is 100, not 84; 255 at 15 % is 300 (HP 10bII+ user's guide p. 47)
    [InlineData("60", "40", "100.00")]
    [InlineData("255", "15", "300.00")]
    [InlineData("19", "37.5", "30.40")] // a mark-up of 60 % is a margin of 37.5 %: 30.40 (HP 10B owner's manual p. 34)
    public void Margin_is_a_share_of_the_price(string cost, string marginPercent, string price) =>
        Ask.Result("price", $$"""{ "currency": "USD", "packaging": "{{cost}}", "marginPercent": {{marginPercent}} }""").Text("netPrice").ShouldBe(price);

    [Fact] // absorption by labour hours: 100 000/40 000 = 2.5 an hour, 400 h carry 1000, the job costs 8400 (textbook problem, Job 334)
    public void Overhead_is_carried_by_labour_hours()
    {
        var result = Ask.Result("price", """
            { "currency": "USD", "materials": [{ "name": "material", "used": 1, "packSize": 1, "packPrice": "5000" }],
              "labour": [{ "name": "labour", "minutes": 24000, "ratePerHour": "6" }], "overhead": { "monthly": "100000", "benchHoursPerMonth": 40000 } }
            """);
        result.Text("overhead").ShouldBe("1000.00");
        result.Text("cost").ShouldBe("8400.00");
    }

    [Theory] // EN 16931 BR-CO-17, official test file: 6491.34 at 25 % is 1622.84 (1622.835), 2141.05 at 14 % is 299.75, 19935.66 at 15 % is 2990.35
    [InlineData("6491.34", "25", "1622.84")]
    [InlineData("-6491.34", "25", "-1622.84")]
    [InlineData("2141.05", "14", "299.75")]
    [InlineData("19935.66", "15", "2990.35")]
    public void Rounding_is_half_away_from_zero(string taxable, string percent, string tax) =>
        Rounding.To(Decimal(taxable) * Decimal(percent) / 100, 2).ShouldBe(Decimal(tax));

    [Fact] // EN 16931 example ubl-tc434-example9: 147.00 at 21 % is 30.87, gross 177.87; rounding up to the cent must not move it
    public void A_price_that_is_whole_cents_stays()
    {
        var result = Ask.Result("price", """{ "currency": "EUR", "packaging": "147.00", "taxPercent": 21 }""");
        result.Text("total").ShouldBe("177.87");
        result.Text("tax").ShouldBe("30.87");
        result.Text("netPrice").ShouldBe("147.00");
    }

    [Fact] // EN 16931 example ubl-tc434-example5: gross 4675.00, half paid beforehand, 2337.50 due
    public void Half_as_deposit_leaves_the_other_half()
    {
        var result = Ask.Result("price", """{ "currency": "DKK", "packaging": "4675.00", "depositPercent": 50 }""");
        result.Text("deposit").ShouldBe("2337.50");
        result.Text("balance").ShouldBe("2337.50");
    }

    [Fact] // 0.25 x 0.5 = 0.125: half away from zero for the deposit, the balance takes the rest
    public void An_odd_penny_goes_to_the_deposit()
    {
        var result = Ask.Result("price", """{ "currency": "GBP", "packaging": "0.25", "depositPercent": 50 }""");
        result.Text("deposit").ShouldBe("0.13");
        result.Text("balance").ShouldBe("0.12");
    }

    [Fact] // at the break-even total nothing is left: total/(1 + t) = cost + f x total + fixed
    public void Break_even_leaves_no_profit()
    {
        var total = Decimal(Ask.Result("price", Piece.With("roundTo", null).With("marginPercent", "0")).Text("total"));
        total.ShouldBe(Decimal(Ask.Result("price", Piece).Text("breakEvenTotal")));
    }

    [Theory] // digits of the minor unit as in ISO 4217, from memory
    [InlineData("GBP", 2)]
    [InlineData("EUR", 2)]
    [InlineData("JPY", 0)]
    [InlineData("KRW", 0)]
    [InlineData("ISK", 0)]
    [InlineData("VND", 0)]
    [InlineData("KWD", 3)]
    [InlineData("BHD", 3)]
    [InlineData("TND", 3)]
    [InlineData("JOD", 3)]
    [InlineData("CLF", 4)]
    [InlineData("HRK", null)] // withdrawn 2023
    [InlineData("gbp", null)]
    [InlineData("XAU", null)]
    public void Currencies_know_their_minor_unit(string code, int? digits) => Currencies.MinorDigits(code).ShouldBe(digits);

    [Fact]
    public void Every_code_has_three_capital_letters() => Currencies.Codes.ShouldAllBe(c => c.Length == 3 && c.All(char.IsAsciiLetterUpper));

    private static decimal Decimal(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
