using System.Text.Json;
using Studio.Engine.Cure;
using Studio.Engine.Forecast;
using Studio.Engine.Tests.Forecast;

namespace Studio.Engine.Tests.NeverEarly;

/// <summary>A run of heat that was made for one room, and a room that turned out another: the clock's gel stays behind what the run says when it is made again.</summary>
public sealed class OtherRoomTests
{
    [Theory]
    [InlineData("deepPour", 12)]
    [InlineData("deepPour", 30)]
    [InlineData("deepPour", 45)]
    [InlineData("casting", 6)]
    [InlineData("casting", 12)]
    [InlineData("casting", 18)]
    public void In_a_colder_room_the_gel_is_no_sooner_than_its_own_run_would_tell(string kind, double deepMm)
    {
        var state = kind == "casting" ? Pieces.Casting : Pieces.Deep;
        var likely = new LikelyCure([state.Best().Kinetics]);
        var foretold = new HeatGel(Run(23), Film(23));
        foreach (var celsius in new[] { 22.5, 22, 21.5, 21, 20, 19, 18, 16 })
        {
            var layer = new PouredLayer("layer", new CureSheet { Times = [] }, 0) { Likely = likely, Heat = foretold };
            var told = CureClock.Run([layer], [new RoomReading(0, celsius)], double.PositiveInfinity).Layers[0].Gel.AtHours!.Value;
            told.ShouldBeGreaterThan(0.99 * Run(celsius), $"{kind} {deepMm} mm at {celsius} °C: film {Film(celsius):0.0} h, run at 23 °C {foretold.LastGelAfterHours:0.0} h, its film {foretold.FilmAfterHours:0.0} h");
        }

        double Film(double celsius) => likely.GelHours(new RoomLog([new RoomReading(0, celsius)]), 0, null, 9999)!.Value;

        double Run(double celsius)
        {
            var (piece, mould) = Pieces.Tray(deepMm, celsius, 300);
            var best = state.Best();
            piece = piece with { Layers = [piece.Layers[0] with { Kinetics = best.Kinetics, DensityKgPerM3 = best.DensityKgPerM3, HeatCapacityJPerKgK = best.HeatCapacityJPerKgK, ConductivityWPerMK = best.ConductivityWPerMK }] };
            return HeatForecast.Run(piece, mould, [new ForecastResin(null, null)], preview: true, TestContext.Current.CancellationToken).Layers[0].LastGelAfterHours!.Value;
        }
    }

    [Fact]
    public void Where_the_film_never_gels_an_old_run_of_heat_tells_no_gel()
    {
        var likely = new LikelyCure([Pieces.Casting.Best().Kinetics with { GlassEndC = 90 }]);
        var layer = new PouredLayer("layer", new CureSheet { Times = [] }, 0) { Likely = likely, Heat = new(9, 12) };
        var gel = CureClock.Run([layer], [new RoomReading(0, -25)], double.PositiveInfinity).Layers[0].Gel;
        gel.AtHours.ShouldBeNull();
        gel.Reason.ShouldNotBeNull();
    }

    // a reading that lies off the line by less than the ease is left out, one that lies further is kept
    [Fact]
    public void A_room_is_eased_within_its_bound()
    {
        var random = new Random(3);
        var room = new RoomCurve([.. Enumerable.Range(0, 400).Select(i => new RoomReading(i / 4.0, 20 + (3 * Math.Sin(i / 30.0)) + (0.08 * random.NextDouble())))]);
        room.Eased.Count.ShouldBeLessThan(120);
        room.Readings.ShouldAllBe(r => Math.Abs(room.Eased.CelsiusAt(r.Hours) - r.Celsius) <= RoomCurve.EasedC + 1e-9);
    }

    [Theory]
    [InlineData("""{ "fullCureHours": 72 }""", 0, null)]
    [InlineData("""{ "class": "casting", "gelMinutes": 240, "cupMassG": 4 }""", 0, "gel-without-bound")]
    public void A_sheet_that_fits_nothing_is_told_by_its_own_hours_in_a_mould_too(string sheet, int exit, string? finding)
    {
        var answer = Calculations.Run("cure", $$"""
            { "resins": { "r": { "dataSheet": {{sheet}} } }, "room": [{ "hours": 0, "celsius": 23 }], "untilHours": 200,
              "layers": [{ "name": "l", "resin": "r", "thicknessMm": 6, "pouredAtHours": 0, "mould": { "shape": "cone", "bottomDiameterMm": 80, "topDiameterMm": 80, "heightMm": 20, "wall": { "thicknessMm": 8 } } }] }
            """);
        answer.ExitCode.ShouldBe(exit, answer.Json);
        answer.Json.Contains("gel-without-bound", StringComparison.Ordinal).ShouldBe(finding is not null, answer.Json);
    }

    [Fact]
    public void A_wall_that_calc_heat_refuses_is_refused_beside_a_layer_too()
    {
        var answer = Calculations.Run("cure", """
            { "resins": { "r": { "dataSheet": { "class": "casting", "gelMinutes": 240 } } }, "room": [{ "hours": 0, "celsius": 23 }], "untilHours": 200,
              "layers": [{ "name": "l", "resin": "r", "thicknessMm": 6, "pouredAtHours": 0, "mould": { "shape": "cone", "bottomDiameterMm": 80, "topDiameterMm": 80, "heightMm": 20, "wall": { "thicknessMm": 8, "conductivityWPerMK": 0 } } }] }
            """);
        answer.ExitCode.ShouldBe(2, answer.Json);
        JsonElement.Parse(answer.Json).GetProperty("errors").EnumerateArray().Select(e => e.GetProperty("path").GetString()).ShouldBe(["layers[0].mould.wall.conductivityWPerMK"]);
    }
}
