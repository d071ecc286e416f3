namespace Studio.Bench.Tools.OtherResins;

/// <summary>Checks of the generator itself, printed before anything rests on it.</summary>
internal static class OtherChecks
{
    private static readonly DrawnWall NoWall = new(1, 1, 1);
    private static readonly GlassLine Line = new(true, -40, 55, 0.4);

    /// <summary>Says each check; false where one is too far off.</summary>
    public static bool Run(Action<string> say)
    {
        var good = true;
        say("| check of the generator | expected | got | |\n| --- | --- | --- | --- |");
        Row("cylinder, Bi 1.5, Fo 0.25, middle (Heisler)", 0.748332, Heisler(body: RoundBody.Cylinder(100, 2000, 0, 0, 28), new(0, 30, 0), 0.05), 2e-3);
        Row("slab, Bi 1.5, Fo 0.25, insulated face (Heisler)", 0.895067, Heisler(RoundBody.Slab(50, 0, 40), new(30, 0, 0), 0.05), 2e-3);
        var resin = DrawnResin.Draw(new Draws(1), 0) with { Matter = new(1100, 0.19, 350e3, 1900, 0, 0, Line), Kinetics = new(new TwoEnergies(0.04, 70, 55, 1, 2), new CriticalConversion(2, 0, 30), 1e-3) };
        var warm = new RoundHeat(RoundBody.Cylinder(60, 40, 0, 0), resin.Matter, resin.Kinetics, NoWall, new(0, 0, 0), 23, 23).Run(40, 0.577, 23, 0);
        Row("adiabatic rise H·α/c [K]", 350e3 / 1900 * warm.MostConversion, warm.MeanC - 23, 0.02);
        var film = new RoundHeat(RoundBody.Cylinder(60, 40, 0, 0), resin.Matter with { HeatJPerKg = 1e-3 }, resin.Kinetics, NoWall, new(0, 0, 0), 23, 23).Run(40, 0.577, 23, 0);
        Row("isothermal gel, rings beside the film's clock [h]", resin.Kinetics.FilmHours(23, 0.577), film.LastGelHours, 2e-3 * film.LastGelHours);
        var (balance, apart) = SchemeCheck.Run();
        Row("amine scheme: amine and hydrogens kept (worst)", 0, balance, 1e-9);
        Row("amine scheme: table beside four species (worst conversion)", 0, apart, 1e-3);
        foreach (var (what, expected, got, allowed) in SolverCheck.Run())
        {
            Row(what, expected, got, allowed);
        }

        for (var k = 0; k < DrawnClass.All.Count; k++)
        {
            // one resin of each form, of a seed that nothing else is measured on
            var kind = DrawnClass.All[k];
            var (own, mostMm, _, _) = TruthMaker.Draw(kind, 1, k);
            var layerMm = Math.Min(kind.UsualMm, kind.PrintedMm(mostMm));
            var (told, finer) = (DrawnTrial.Layer(own, layerMm, 28), DrawnTrial.Layer(own, layerMm, 28, 26, 0.3));
            Row($"{kind.Key}, {own.Form}: peak at 28 °C beside a finer grid and steps [°C]", finer.PeakC, told.PeakC, (0.01 * (finer.PeakC - 28)) + 0.05);
            Row($"{kind.Key}: last gel, likewise [h]", finer.LastGelHours, told.LastGelHours, 0.01 * finer.LastGelHours);
            var (cup, finerCup) = (DrawnTrial.Cup(own, kind.CupG), DrawnTrial.Cup(own, kind.CupG, 22, 0.4));
            Row($"{kind.Key}: cup's gel, likewise [min]", finerCup.FirstGelHours * 60, cup.FirstGelHours * 60, 0.01 * finerCup.FirstGelHours * 60);

            // in a run-away the front is thinner than a cell; the sheet's own scatter of 8 to 12 % is wider than what that costs
            Row($"{kind.Key}: cup's peak, likewise [°C]", finerCup.PeakC, cup.PeakC, (finerCup.PeakC > 200 ? 0.06 : 0.02) * (finerCup.PeakC - 23));
            Row($"{kind.Key}: energy missing, as a share of what was released", 0, Math.Max(Math.Abs(told.EnergyMiss), Math.Abs(cup.EnergyMiss)), 1e-3);
            Row($"{kind.Key}: conversions outside 0 to 1, by", 0, Math.Max(0, -told.LeastConversion) + Math.Max(0, cup.MostConversion - 1), 0);
        }

        return good;

        void Row(string what, double expected, double got, double allowed)
        {
            var fits = Math.Abs(got - expected) <= allowed;
            good &= fits;
            say(FormattableString.Invariant($"| {what} | {expected:0.######} | {got:0.######} | {(fits ? "" : "TOO FAR")} |"));
        }
    }

    // the conductivity that makes Bi 1.5, until Fo 0.25
    private static double Heisler(RoundBody body, DrawnFilms films, double lengthM)
    {
        var k = films.Top + films.Side > 0 ? Math.Max(films.Top, films.Side) * lengthM / 1.5 : 1;
        const double capacity = 1000.0 * 1000;
        var matter = new DrawnMatter(1000, k, 0, 1000, 0, 0, Line);
        var heat = new RoundHeat(body, matter, null, NoWall, films, 1, 0);
        heat.Run(0.25 * lengthM * lengthM * capacity / k / 3600, 0.5, 0, 0, 0.01);
        return body.Rings > 1 ? Axis(body, heat.Celsius, body.LevelCount / 2) : heat.Celsius[body.Cell(0, 0)];
    }

    // the value on the middle line, from the two innermost rings by a parabola
    private static double Axis(RoundBody body, double[] t, int level)
    {
        var (a, b) = (body.Radii[1] * body.Radii[1] / 2, ((body.Radii[1] * body.Radii[1]) + (body.Radii[2] * body.Radii[2])) / 2);
        return t[body.Cell(0, level)] + ((t[body.Cell(0, level)] - t[body.Cell(1, level)]) * a / (b - a));
    }
}
