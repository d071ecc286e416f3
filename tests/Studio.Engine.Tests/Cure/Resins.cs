using CsCheck;
using Studio.Engine.Cure;

namespace Studio.Engine.Tests.Cure;

/// <summary>Invented kinetics for the cure tests.</summary>
internal static class Resins
{
    internal static readonly Kinetics Standard = new() { RateAt23CPerS = 1.2e-4, Kappa = 0.04, ActivationJPerMol = 55_000, HeatJPerKg = 370_000 };

    // so far off that it never slows anything
    internal static readonly Kinetics NeverGlassy = Standard with { VitrificationOffsetK = 1e6 };

    internal static readonly CureSheet Silent = new() { Times = [] };

    // slow to fast, glassy early or late; m of 1 or more, so that a plain integration is good from the start
    internal static Gen<Kinetics> Any { get; } =
        Gen.Select(Gen.Double[-10.2, -7.2], Gen.Double[0.01, 0.1], Gen.Double[1, 1.3], Gen.Double[1.5, 2.3], Gen.Double[40_000, 70_000], Gen.Double[30, 75], Gen.Double[2, 12], Gen.Double[2, 8])
            .Select((rate, kappa, m, n, e, glass, offset, width) => new Kinetics
            {
                RateAt23CPerS = Math.Exp(rate),
                Kappa = kappa,
                M = m,
                N = n,
                ActivationJPerMol = e,
                HeatJPerKg = 370_000,
                GlassEndC = glass,
                VitrificationOffsetK = offset,
                VitrificationWidthK = width,
            });

    internal static KineticClock Clock(Kinetics kinetics, params RoomReading[] room) => new(kinetics, Silent, new RoomLog(room), 0);
}
