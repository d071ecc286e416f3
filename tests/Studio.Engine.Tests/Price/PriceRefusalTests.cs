namespace Studio.Engine.Tests.Price;

public sealed class PriceRefusalTests
{
    private const string Good = """
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
    [InlineData("currency", null)]
    [InlineData("currency", "\"XYZ\"")]
    [InlineData("currency", "\"gbp\"")]
    [InlineData("currency", "826")]
    [InlineData("currency", "null")]
    [InlineData("materials", "{}")]
    [InlineData("materials[0]", "4")]
    [InlineData("materials[0].name", "\"\"")]
    [InlineData("materials[0].name", null)]
    [InlineData("materials[0].used", "-1")]
    [InlineData("materials[0].used", "\"400 g\"")]
    [InlineData("materials[0].used", null)]
    [InlineData("materials[0].packSize", "0")]
    [InlineData("materials[0].packSize", "1e-40")] // nothing is left of it
    [InlineData("materials[0].packPrice", "\"-1\"")]
    [InlineData("materials[0].packPrice", "\"30,00\"")]
    [InlineData("materials[0].packPrice", "\"1,000.00\"")]
    [InlineData("materials[0].packPrice", "\"£30\"")]
    [InlineData("materials[0].packPrice", "\"\"")]
    [InlineData("materials[0].packPrice", "\" 30\"")]
    [InlineData("materials[0].packPrice", "\"3e1\"")]
    [InlineData("materials[0].packPrice", "1e999")]
    [InlineData("materials[0].packPrice", "\"99999999999999999999999999999999\"")]
    [InlineData("materials[0].packPrice", "true")]
    [InlineData("materials[0].packPrice", "null")]
    [InlineData("materials[0].yieldPercent", "0")]
    [InlineData("materials[0].yieldPercent", "100.1")]
    [InlineData("materials[0].unit", "\"g\"")]
    [InlineData("labour[0].minutes", "-1")]
    [InlineData("labour[0].ratePerHour", null)]
    [InlineData("labour[0].hours", "1")]
    [InlineData("equipment[0].hours", "-1")]
    [InlineData("equipment[0].ratePerHour", "\"-0.01\"")]
    [InlineData("overhead", "5")]
    [InlineData("overhead.monthly", null)]
    [InlineData("overhead.benchHoursPerMonth", "0")]
    [InlineData("remakePercent", "100")]
    [InlineData("remakePercent", "-1")]
    [InlineData("packaging", "\"-3\"")]
    [InlineData("delivery", "[]")]
    [InlineData("fee.percent", "-1")]
    [InlineData("fee.fixed", "\"-0.01\"")]
    [InlineData("fee.flat", "1")]
    [InlineData("marginPercent", "-1")]
    [InlineData("marginPercent", "97.6")] // 1 - 0.976 - 0.02 x 1.2 leaves exactly nothing
    [InlineData("marginPercent", "100")]
    [InlineData("marginPercent", "\"thirty\"")]
    [InlineData("taxPercent", "-20")]
    [InlineData("roundTo", "0")]
    [InlineData("roundTo", "\"-0.50\"")]
    [InlineData("roundTo", "\"0.005\"")] // less than a penny
    [InlineData("depositPercent", "100.5")]
    [InlineData("depositPercent", "-1")]
    [InlineData("discount", "5")]
    public void One_fault_is_one_error_at_its_field(string path, string? value)
    {
        var errors = Ask.Errors("price", Good.With(path, value));
        errors.Select(e => e.Path).ShouldBe([path]);
        errors[0].Message.ShouldEndWith(".");
    }

    [Fact]
    public void A_margin_fee_and_tax_that_leave_nothing_say_so()
    {
        var error = Ask.Errors("price", Good.With("marginPercent", "60").With("fee.percent", "40")).Single();
        error.Path.ShouldBe("marginPercent");
        error.Message.ShouldContain("leave nothing");
    }

    [Fact]
    public void A_margin_that_leaves_a_little_is_priced() => Ask.Result("price", Good.With("marginPercent", "97.5"));

    [Theory]
    [InlineData("materials[0].packSize", "1e-28")]
    [InlineData("marginPercent", "97.59999999999999999999999999")]
    public void What_grows_beyond_all_numbers_is_an_error_and_no_crash(string path, string value) => Ask.Errors("price", Good.With(path, value)).Single().Path.ShouldBe("");

    [Fact]
    public void All_errors_come_at_once() =>
        Ask.Errors("price", Good.With("currency", "\"XYZ\"").With("materials[0].packSize", "0").With("labour[0].minutes", "\"long\"").With("remakePercent", "100").With("tip", "1"))
            .Select(e => e.Path).ShouldBe(["labour[0].minutes", "tip", "materials[0].packSize", "remakePercent", "currency"], ignoreOrder: true);
}
