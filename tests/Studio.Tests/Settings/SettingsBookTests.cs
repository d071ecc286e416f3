using System.Text.Json;
using Studio.Data;
using Studio.Settings;

namespace Studio.Tests.Settings;

public sealed class SettingsBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();

    private SettingsBook Book => new(studio.Factory, studio.News);

    public void Dispose() => studio.Dispose();

    [Fact]
    public void A_new_studios_figures_are_all_in_order() => new SettingsValidator().Validate(new StudioSettings()).Errors.ShouldBeEmpty();

    [Fact]
    public async Task Two_owners_saving_at_once_lose_nothing()
    {
        await Book.SaveAsync(new StudioSettings(), "Wren");
        var hers = await Book.ReadAsync();
        var his = await Book.ReadAsync();
        hers.MarginPercent = 40;
        his.TaxPercent = 20;

        (await Book.SaveAsync(hers, "Wren")).Ok.ShouldBeTrue();
        (await Book.SaveAsync(his, "Ash")).Words.ShouldBe(Saved.SomeoneElse);

        (await Book.ReadAsync()).MarginPercent.ShouldBe(40);
        his.TaxPercent.ShouldBe(20, "what he typed stays in his form");
    }

    [Fact]
    public async Task A_change_is_found_in_the_history_with_before_and_after()
    {
        await Book.SaveAsync(new StudioSettings(), "Wren");
        var settings = await Book.ReadAsync();
        settings.LabourRatePerHour = 22.5m;
        settings.Places = ["Bench", "Top shelf"];
        await Book.SaveAsync(settings, "Ash");

        var audit = new AuditBook(studio.Factory, Book);
        var line = (await audit.ListAsync("labour ash", 50)).Lines.ShouldHaveSingleItem();

        (line.By, line.What).ShouldBe(("Ash", "Settings"));
        line.Fields.ShouldContain(new ChangedField("labour rate per hour", "18", "22.5"));
        line.Fields.ShouldContain(f => f.Field == "places" && f.After.Contains("Top shelf", StringComparison.Ordinal));
        (await audit.ListAsync("nobody", 50)).Lines.ShouldBeEmpty();
    }

    public static TheoryData<string, string, object> Absurd => new()
    {
        { nameof(StudioSettings.Currency), "Currency", "POUNDS" },
        { nameof(StudioSettings.Currency), "Currency", "gbp" },
        { nameof(StudioSettings.TimeZone), "TimeZone", "Middle/Earth" },
        { nameof(StudioSettings.PublicUrl), "PublicUrl", "javascript:alert(1)" },
        { nameof(StudioSettings.PublicUrl), "PublicUrl", "studio" },
        { nameof(StudioSettings.Paper), "Paper", "papyrus" },
        { nameof(StudioSettings.Units), "Units", "cubits" },
        { nameof(StudioSettings.StudioName), "StudioName", "  " },
        { nameof(StudioSettings.StudioName), "StudioName", new string('x', 5000) },
        { nameof(StudioSettings.Email), "Email", "no at" },
        { nameof(StudioSettings.TaxName), "TaxName", " " },
        { nameof(StudioSettings.LabourRatePerHour), "LabourRatePerHour", -1m },
        { nameof(StudioSettings.LabourRatePerHour), "LabourRatePerHour", 1e12m },
        { nameof(StudioSettings.MarginPercent), "MarginPercent", 100m },
        { nameof(StudioSettings.BenchHoursPerMonth), "BenchHoursPerMonth", 0m },
        { nameof(StudioSettings.RemakePercent), "RemakePercent", 100m },
        { nameof(StudioSettings.DepositPercent), "DepositPercent", 101m },
        { nameof(StudioSettings.RoundTo), "RoundTo", 0.001m },
        { nameof(StudioSettings.RoundTo), "RoundTo", 0m },
        { nameof(StudioSettings.QuoteValidDays), "QuoteValidDays", 0 },
        { nameof(StudioSettings.WastePercent), "WastePercent", 1e9 },
        { nameof(StudioSettings.WastePerBatchG), "WastePerBatchG", -0.1 },
        { nameof(StudioSettings.WorkDays), "WorkDays", new List<string>() },
        { nameof(StudioSettings.WorkDays), "WorkDays", new List<string> { "mon", "mon" } },
        { nameof(StudioSettings.WorkDays), "WorkDays", new List<string> { "Monday" } },
        { nameof(StudioSettings.WorkUntil), "WorkUntil", new TimeOnly(9, 0) },
        { nameof(StudioSettings.WorkUntil), "WorkFrom", new TimeOnly(18, 0) },
        { nameof(StudioSettings.WorkMinutesPerDay), "WorkMinutesPerDay", 0 },
        { nameof(StudioSettings.WorkMinutesPerDay), "WorkMinutesPerDay", 481 },
        { nameof(StudioSettings.DaysOff), "DaysOff", Enumerable.Range(0, 1001).Select(d => new DateOnly(2026, 1, 1).AddDays(d)).ToList() },
        { nameof(StudioSettings.ReserveDays), "ReserveDays", -1 },
        { nameof(StudioSettings.DeliveryDays), "DeliveryDays", 366 },
        { nameof(StudioSettings.UsualRoomC), "UsualRoomC", 66.0 }, // °F typed for °C
        { nameof(StudioSettings.UsualRoomC), "UsualRoomC", double.NaN },
    };

    [Theory]
    [MemberData(nameof(Absurd))]
    public async Task An_absurd_figure_is_refused_beside_its_field_and_nothing_is_saved(string field, string property, object value)
    {
        var settings = new StudioSettings();
        typeof(StudioSettings).GetProperty(property)!.SetValue(settings, value);

        new SettingsValidator().Validate(settings).Errors.Select(e => e.PropertyName).Distinct(StringComparer.Ordinal).ShouldBe([field]);
        (await Book.SaveAsync(settings, "Wren")).Ok.ShouldBeFalse();
        JsonSerializer.Serialize(await Book.ReadAsync()).ShouldBe(JsonSerializer.Serialize(new StudioSettings()));
    }

    [Fact]
    public async Task Hours_and_days_survive_the_round_trip()
    {
        var own = new StudioSettings
        {
            WorkDays = ["sat", "sun"],
            WorkFrom = new(7, 45),
            WorkUntil = new(23, 59),
            WorkMinutesPerDay = 1,
            DaysOff = [new(2026, 12, 25), new(2027, 1, 1)],
            ReserveDays = 0,
            DeliveryDays = 0,
            UsualRoomC = 18.5,
        };
        (await Book.SaveAsync(own, "Wren")).Ok.ShouldBeTrue();
        JsonSerializer.Serialize(await Book.ReadAsync()).ShouldBe(JsonSerializer.Serialize(own));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void A_number_that_no_decimal_can_hold_never_reaches_the_check(double waste) =>
        new SettingsValidator().Validate(new StudioSettings { WastePercent = waste }).IsValid.ShouldBeFalse();

    [Fact]
    public void Two_places_of_the_same_name_are_told_apart() =>
        new SettingsValidator().Validate(new StudioSettings { Places = ["Bench", "bench"] }).Errors.ShouldHaveSingleItem().ErrorMessage.ShouldContain("same name");

    [Theory]
    [InlineData("JPY", 0.5, false)]
    [InlineData("JPY", 100, true)]
    [InlineData("EUR", 0.05, true)]
    [InlineData("KWD", 0.005, true)]
    public void Totals_are_rounded_to_coins_that_exist(string currency, double step, bool fine) =>
        new SettingsValidator().Validate(new StudioSettings { Currency = currency, RoundTo = (decimal)step }).IsValid.ShouldBe(fine);
}
