using CsCheck;
using Studio.Engine.Cure;

namespace Studio.Engine.Tests.Cure;

/// <summary>Invented data sheets and rooms for the cure tests.</summary>
internal static class Sheets
{
    // classes of resin, common practice, no source: casting takes its next pour after about 6 h, deep-pour after about two days
    internal static readonly CureSheet Casting = One(23, gel: 2, from: 6, until: 24, demould: 24, full: 72);

    internal static readonly CureSheet DeepPour = One(23, gel: 18, from: 48, until: 96, demould: 72, full: 168);

    internal static Gen<RoomReading[]> Rooms { get; } =
        Gen.Select(Gen.Int[-640, 7680], Gen.Double[-5, 45], (h, c) => new RoomReading(h / 64.0, c)).Array[1, 8]
            .Select(rs => rs.DistinctBy(r => r.Hours).ToArray());

    internal static Gen<CureSheet> Any { get; } =
        Gen.Select(Gen.Double[15, 25], Gen.Double[3, 15], Gen.Double[1, 40], Gen.Double[0.3, 1], Gen.Double[1, 3], Gen.Bool, (c, apart, h, warmer, factor, two) => new CureSheet
        {
            FactorPer10C = factor,
            MinC = 15,
            MaxC = 30,
            Times = two ? [Times(c, h), Times(c + apart, h * warmer)] : [Times(c, h)],
        });

    internal static CureSheet One(double c, double? gel = null, double? from = null, double? until = null, double? demould = null, double? full = null) => new()
    {
        Times =
        [
            new()
            {
                AtCelsius = c, GelHours = gel, NextPourFromHours = from, NextPourUntilHours = until, DemouldHours = demould, FullCureHours = full,
            },
        ],
    };

    internal static LayerCure Run(CureSheet sheet, params RoomReading[] room) => RunFrom(0, sheet, room);

    internal static LayerCure RunFrom(double pouredAt, CureSheet sheet, RoomReading[] room) =>
        CureClock.Run([new("1", sheet, pouredAt)], room, double.PositiveInfinity).Layers[0];

    internal static double[] Ready(LayerCure cure) =>
        [cure.Gel.AtHours!.Value, cure.NextPourFrom.AtHours!.Value, cure.Demould.AtHours!.Value, cure.FullCure.AtHours!.Value];

    internal static double[] All(LayerCure cure) => [.. Ready(cure), cure.NextPourUntil.AtHours!.Value];

    private static CureTimes Times(double c, double h) => new()
    {
        AtCelsius = c,
        GelHours = h / 3,
        NextPourFromHours = h / 2,
        NextPourUntilHours = h * 1.5,
        DemouldHours = h,
        FullCureHours = 3 * h,
    };
}
