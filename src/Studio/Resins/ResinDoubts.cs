using System.Globalization;
using Studio.Engine;
using Studio.Engine.Resins;
using Studio.Shell;

namespace Studio.Resins;

/// <summary>Doubts about a data sheet that contradicts itself or looks mistyped. It can be kept; the maker should look.</summary>
public static class ResinDoubts
{
    private const string Practice = "common practice, no source";
    private const string Arithmetic = "the sheet's own figures";

    // a workroom in °C stays under this; sheets written in °F print 60 to 90
    private const double WarmestRoomC = 45;

    /// <summary>Every doubt, its path naming the form's field, such as <c>Times[0].DemouldHours</c>.</summary>
    public static IReadOnlyList<Finding> Of(ResinForm r)
    {
        Finding[] together = [.. Mixing(r), .. Pot(r), .. Rooms(r), .. r.Times.Index().SelectMany(t => Row(t.Item, $"Times[{t.Index}].")), .. Rows(r), .. Silence(r)];

        // what two figures say of each other goes before what is usual for one alone
        return [.. together, .. Figures(r).Where(f => !Array.Exists(together, t => t.Path == f.Path))];
    }

    private static IEnumerable<Finding> Mixing(ResinForm r) =>
        MixDoubts.Of(new() { PartsA = r.PartsA ?? 0, PartsB = r.PartsB ?? 0, By = r.MixBy, DensityAGPerMl = r.DensityAGPerMl, DensityBGPerMl = r.DensityBGPerMl }, r.DensityGPerMl, "")
            .Select(f => f with
            {
                Path = f.Path switch { "mix.densityAGPerMl" => nameof(r.DensityAGPerMl), "mix.densityBGPerMl" => nameof(r.DensityBGPerMl), "mix.partsB" => nameof(r.PartsB), _ => nameof(r.DensityGPerMl) },
            });

    // a temperature is asked for °F further below
    private static IEnumerable<Finding> Figures(ResinForm r)
    {
        var sheet = new (string Key, double? Value, double? AtC, string Path)[]
        {
            ("viscosityMPas", r.ViscosityMPas, null, nameof(r.ViscosityMPas)),
            ("potLifeMinutes", r.PotLifeMinutes, r.PotLifeAtC, nameof(r.PotLifeMinutes)),
            ("cupMassG", r.PotLifeMassG, null, nameof(r.PotLifeMassG)),
            ("gelMinutes", r.CupGelMinutes, r.PotLifeAtC, nameof(r.CupGelMinutes)),
            ("peakCelsius", r.CupPeakC, null, nameof(r.CupPeakC)),
            ("maxPourMm", r.MaxPourMm, null, nameof(r.MaxPourMm)),
            ("maxBatchG", r.MaxBatchG, null, nameof(r.MaxBatchG)),
            ("heatDeflectionC", r.HeatDeflectionC, null, nameof(r.HeatDeflectionC)),
        };
        var rows = r.Times.Index().SelectMany(t => new (string Key, double? Value, double? AtC, string Path)[]
        {
            ("gelHours", t.Item.GelHours, t.Item.AtC, $"Times[{t.Index}].{nameof(t.Item.GelHours)}"),
            ("nextPourFromHours", t.Item.NextFromHours, t.Item.AtC, $"Times[{t.Index}].{nameof(t.Item.NextFromHours)}"),
            ("nextPourUntilHours", t.Item.NextUntilHours, t.Item.AtC, $"Times[{t.Index}].{nameof(t.Item.NextUntilHours)}"),
            ("demouldHours", t.Item.DemouldHours, t.Item.AtC, $"Times[{t.Index}].{nameof(t.Item.DemouldHours)}"),
            ("fullCureHours", t.Item.FullCureHours, t.Item.AtC, $"Times[{t.Index}].{nameof(t.Item.FullCureHours)}"),
        });
        return sheet.Concat(rows).Select(f => SheetFigure.Doubt(f.Key, f.Value, r.Class, f.Path, f.AtC)).OfType<Finding>();
    }

    private static IEnumerable<Finding> Pot(ResinForm r)
    {
        if (r is { PotLifeMinutes: not null, PotLifeMassG: null })
        {
            yield return new("pot-life-without-mass", Severity.Warn, nameof(r.PotLifeMassG),
                "A pot life holds for one mass only, often 100 g: a larger cup sets sooner and runs hotter. Enter the mass that the sheet prints beside it.", Practice);
        }

        if (r is { PotLifeMinutes: not null, PotLifeAtC: null })
        {
            yield return new("pot-life-without-temperature", Severity.Note, nameof(r.PotLifeAtC), "Enter the temperature that the pot life is printed for.", Practice);
        }

        if (r.PotLifeMinutes is { } pot && r.Times.Where(t => t.GelHours is not null).Select(t => t.GelHours!.Value * 60).DefaultIfEmpty(double.PositiveInfinity).Max() < pot)
        {
            yield return new("gel-before-pot-life", Severity.Warn, nameof(r.PotLifeMinutes), "The resin would gel before its pot life is over. Check minutes against hours.", Arithmetic);
        }
    }

    private static IEnumerable<Finding> Rooms(ResinForm r)
    {
        var all = new[] { (r.PotLifeAtC, nameof(r.PotLifeAtC)), (r.MinC, nameof(r.MinC)), (r.MaxC, nameof(r.MaxC)) }
            .Concat(r.Times.Index().Select(t => (t.Item.Empty ? null : t.Item.AtC, $"Times[{t.Index}].AtC")));
        return all.Where(t => t.Item1 > WarmestRoomC).Select(t => new Finding("looks-like-fahrenheit", Severity.Warn, t.Item2,
            string.Create(CultureInfo.InvariantCulture, $"{t.Item1:0.#} °C is hotter than a workroom. If the sheet means Fahrenheit, type {t.Item1:0.#} °F, which is {(t.Item1 - 32) / 1.8:0.#} °C."), "our rule: a workroom is under 45 °C"));
    }

    private static IEnumerable<Finding> Row(ResinTimesRow t, string at)
    {
        if (t.GelHours > t.NextFromHours)
        {
            yield return new("gel-after-next-pour", Severity.Warn, at + nameof(t.GelHours), "The next pour would begin before this one has gelled, and would sink into it. Check both.", Arithmetic);
        }

        if (t.NextFromHours > t.DemouldHours)
        {
            yield return new("demould-before-next-pour", Severity.Warn, at + nameof(t.DemouldHours), "It would leave the mould before the next layer may be poured. Check both.", Arithmetic);
        }

        if (t.GelHours >= t.DemouldHours)
        {
            yield return new("gel-after-demould", Severity.Warn, at + nameof(t.DemouldHours), "It would leave the mould before it has gelled. Check both.", Arithmetic);
        }

        if (t.DemouldHours > t.FullCureHours)
        {
            yield return new("demould-after-full-cure", Severity.Warn, at + nameof(t.FullCureHours), "Full cure would come before demoulding. Full cure is often printed in days: type 7 days.", Arithmetic);
        }
    }

    // a warmer room is never slower
    private static IEnumerable<Finding> Rows(ResinForm r)
    {
        var rows = r.Times.Index().Where(t => t.Item is { Empty: false, AtC: not null }).OrderBy(t => t.Item.AtC).ToList();
        foreach (var (colder, warmer) in rows.Zip(rows.Skip(1)))
        {
            if (Pairs(colder.Item, warmer.Item).Any(p => p.Warm > p.Cold))
            {
                yield return new("warmer-is-slower", Severity.Warn, $"Times[{warmer.Index}].{nameof(ResinTimesRow.AtC)}",
                    $"At {Say.Celsius(warmer.Item.AtC!.Value)} something takes longer than at {Say.Celsius(colder.Item.AtC!.Value)}. Resin cures faster when it is warmer: check both rows.", Practice);
            }
        }
    }

    private static IEnumerable<(double? Cold, double? Warm)> Pairs(ResinTimesRow a, ResinTimesRow b) =>
        [(a.GelHours, b.GelHours), (a.NextFromHours, b.NextFromHours), (a.NextUntilHours, b.NextUntilHours), (a.DemouldHours, b.DemouldHours), (a.FullCureHours, b.FullCureHours)];

    private static IEnumerable<Finding> Silence(ResinForm r)
    {
        if (r.Times.TrueForAll(t => t.NextFromHours is null && t.DemouldHours is null))
        {
            yield return new("no-times", Severity.Warn, "TimesAll", "Without a next pour and a demould time the clock cannot say when hands are needed.", "the clock's own need");
        }

        if (r.MaxPourMm is null)
        {
            yield return new("no-depth", Severity.Warn, nameof(r.MaxPourMm), "Without it nobody is warned of a pour that is too deep, which can overheat.", Practice);
        }
    }
}
