using System.Diagnostics;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>Draws resins until one prints a sheet that its class knows, and works out what it does.</summary>
internal static class TruthMaker
{
    private const int MostDraws = 400;
    private const int MostTurns = 25;

    // one that takes longer to leave its mould, or to gel in a cool room, is not sold for this
    private const double MostDemould = 6;
    private const double MostCool = 3;

    /// <summary>Makes the truth of one number of a class; the same one every time.</summary>
    public static ResinTruth Make(DrawnClass kind, int seed, int number)
    {
        var clock = Stopwatch.GetTimestamp();
        var (resin, mm, draws, drawn) = Draw(kind, seed, number);
        return Tell(resin, kind, draws, mm) with { Number = number, Drawn = drawn, Seconds = Stopwatch.GetElapsedTime(clock).TotalSeconds };
    }

    /// <summary>The resin, its greatest depth [mm] and how many were drawn until it could be on the market.</summary>
    public static (DrawnResin Resin, double MostMm, Draws Draws, int Drawn) Draw(DrawnClass kind, int seed, int number)
    {
        for (var drawn = 1; drawn <= MostDraws; drawn++)
        {
            var draws = new Draws(HashOf(seed, kind.Key, number, drawn));
            if (Sold(DrawnResin.Draw(draws, number % DrawnResin.Forms.Length), kind, draws) is { } resin && Depth(resin, kind) is { } mm)
            {
                return (resin, mm, draws, drawn);
            }
        }

        throw new InvalidOperationException($"{MostDraws} draws gave no {kind.Key} resin.");
    }

    // the time scale is set so that the cup gels when it was drawn to
    private static DrawnResin? Sold(DrawnResin resin, DrawnClass kind, Draws draws)
    {
        var goal = draws.Log("cupGelMinutes", kind.GelFromMin, kind.GelToMin) / 60;
        var film = resin.Kinetics.FilmHours(DrawnTrial.PrintedC, resin.Gel);
        if (!(resin.Kinetics.FilmHours(DrawnTrial.PrintedC, resin.Demould) < MostDemould * film) || !(resin.Kinetics.FilmHours(18, resin.Gel) < MostCool * film))
        {
            return null;
        }

        resin = Paced(resin, film / goal);
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var off = DrawnTrial.Cup(resin, kind.CupG, 6, 3).FirstGelHours / goal;
            if (Math.Abs(off - 1) < 0.01)
            {
                return resin;
            }

            // half the way: a cup that warms itself answers with more than the factor
            resin = Paced(resin, double.IsFinite(off) ? Math.Sqrt(off) : 2);
        }

        return null;
    }

    // the diffusion is on the chemistry's scale, so that the whole is quicker or slower by a factor
    private static DrawnResin Paced(DrawnResin resin, double factor) => resin with { Kinetics = resin.Kinetics with { PerS = resin.Kinetics.PerS * factor } };

    // the depth at which a slab becomes as hot as its maker will bear; none where no sheet of the class would print it
    private static double? Depth(DrawnResin resin, DrawnClass kind)
    {
        var (low, high) = (kind.DeepFromMm, kind.DeepToMm);
        if (DrawnTrial.SlabPeakC(resin, low) > resin.BearableC || DrawnTrial.SlabPeakC(resin, high) < resin.BearableC)
        {
            return null;
        }

        for (var i = 0; i < 7; i++)
        {
            var middle = Math.Sqrt(low * high);
            (low, high) = DrawnTrial.SlabPeakC(resin, middle) < resin.BearableC ? (middle, high) : (low, middle);
        }

        return Math.Sqrt(low * high);
    }

    private static ResinTruth Tell(DrawnResin resin, DrawnClass kind, Draws draws, double mostMm)
    {
        draws.Kept["perS"] = resin.Kinetics.PerS;
        var cup = DrawnTrial.Cup(resin, kind.CupG);
        var printedMm = kind.PrintedMm(mostMm);
        var layerMm = Math.Min(kind.UsualMm, printedMm);
        var (usual, warm, deeper) = (DrawnTrial.Layer(resin, layerMm, 23), DrawnTrial.Layer(resin, layerMm, 28), DrawnTrial.Layer(resin, 1.5 * layerMm, 23));
        var demould = resin.Kinetics.FilmHours(DrawnTrial.PrintedC, resin.Demould);
        double Scattered(double value) => value * Math.Exp(resin.Scatter * draws.Normal());
        var nextPour = draws.Once("printsNextPour", 2.0 / 3) ? DrawnClass.PrintedHours(usual.LastGelHours * draws.Even("nextPour", 1, 1.6)) : (double?)null;
        return new()
        {
            Kind = kind.Key,
            Form = resin.Form,
            Number = 0,
            Drawn = 0,
            Seconds = 0,
            Numbers = draws.Kept,
            Sheet = new(
                kind.CupG,
                DrawnClass.PrintedMinutes(Scattered(cup.FirstGelHours * 60)),
                DrawnClass.Nearest(DrawnTrial.PrintedC + Scattered(cup.PeakC - DrawnTrial.PrintedC), 5),
                DrawnClass.PrintedHours(Scattered(demould)),
                printedMm,
                nextPour,
                DrawnClass.Nearest(resin.Matter.DensityKgPerM3, 10)),
            LayerMm = layerMm,
            LogAt23 = Log(usual, kind, draws),
            LogAt28 = Log(warm, kind, draws),
            PeakAt23C = usual.PeakC,
            PeakAt28C = warm.PeakC,
            PeakDeeperC = deeper.PeakC,
            LastGelHours = usual.LastGelHours,
            FilmGelAt18Hours = resin.Kinetics.FilmHours(18, resin.Gel),
            FilmGelAt23Hours = resin.Kinetics.FilmHours(23, resin.Gel),
            DemouldHours = demould,
            FollowedHours = usual.EndHours,
            EnergyMiss = new[] { cup, usual, warm, deeper }.Max(r => Math.Abs(r.EnergyMiss)),
        };
    }

    // a thermometer of its own error, at the hottest place, half a kelvin of noise, one decimal shown
    private static List<TrueReading> Log(RoundTold told, DrawnClass kind, Draws draws)
    {
        var off = -1 + (2 * draws.Even("probe", 0, 1));
        var readings = new List<TrueReading>();
        var at = 0;
        for (var h = 0.0; h <= told.EndHours; h += kind.LogEveryMin / 60)
        {
            while (at + 2 < told.Curve.Count && told.Curve[at + 1].Hours < h)
            {
                at++;
            }

            var (a, b) = (told.Curve[at], told.Curve[at + 1]);
            var c = a.HottestC + ((b.HottestC - a.HottestC) * (h - a.Hours) / (b.Hours - a.Hours));
            readings.Add(new(Math.Round(h, 6), Math.Round(c + off + (0.5 * draws.Normal()), 1)));
        }

        return readings;
    }

    // FNV-1a, so that no two resins share their draws whatever the seeds are
    private static int HashOf(int seed, string kind, int number, int drawn)
    {
        var hash = 2166136261u;
        foreach (var c in FormattableString.Invariant($"{seed}/{kind}/{number}/{drawn}"))
        {
            hash = unchecked((hash ^ c) * 16777619u);
        }

        return (int)(hash & 0x7FFFFFFF);
    }
}
