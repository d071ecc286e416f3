using Microsoft.EntityFrameworkCore;
using Studio.Bench;
using Studio.Climate;
using Studio.Heat;
using Studio.Resins;
using Studio.Settings;
using Studio.Tests.Bench;

namespace Studio.Tests.Climate;

public sealed class DampTests : IDisposable
{
    private readonly StudioDatabase studio = new();

    public void Dispose() => studio.Dispose();

    // dew point of 20 °C at 85 % by Magnus' formula (Alduchov and Eskridge 1996): 17.4 °C, so a surface of 20 °C is 2.6 K above it
    [Theory]
    [InlineData(85.0, 1.0, 20.0, "near-dew-point")]
    [InlineData(60.0, 1.0, 20.0, "")]
    [InlineData(60.0, 1.0, 14.0, "near-dew-point")]
    [InlineData(78.0, 1.0, 20.0, "too-damp")]
    [InlineData(85.0, 13.0, 20.0, "")]
    public async Task A_damp_room_is_told_before_the_pour(double humidity, double hoursAgo, double roomC, string code)
    {
        var scene = new Scene(studio.Factory, studio.Clock);
        var id = await scene.PieceAsync();
        await using (var db = studio.Open())
        {
            await db.Set<Resin>().ExecuteUpdateAsync(s => s.SetProperty(r => r.MaxHumidityPercent, 75), TestContext.Current.CancellationToken);
            db.Add(new Reading { At = scene.Now.AddHours(-hoursAgo), Celsius = 20, HumidityPercent = humidity, Place = RoomBook.CastingRoom, By = "Sensor" });
            db.Add(new Reading { At = scene.Now, Celsius = 20, Place = RoomBook.CastingRoom, By = "Wren" });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var book = new BenchBook(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), new PourHeatBook(studio.Factory, studio.Clock));
        var sheet = (await book.ReadAsync(id))!;
        var codes = BenchBook.Findings(sheet, sheet.ToPour!, new PourForm { RoomC = roomC }, sheet.Now, null).Select(f => f.Code).Where(c => c is "near-dew-point" or "too-damp").ToList();
        (code.Length == 0 ? codes.Count == 0 : codes.Contains(code)).ShouldBeTrue(string.Join(", ", codes));
    }
}
