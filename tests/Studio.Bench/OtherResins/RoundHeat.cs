namespace Studio.Bench.Tools.OtherResins;

/// <summary>What a body did.</summary>
internal sealed record RoundTold
{
    public required double PeakC { get; init; }

    /// <summary>[h]; infinite where none gelled.</summary>
    public required double FirstGelHours { get; init; }

    /// <summary>[h]; infinite where not all gelled.</summary>
    public required double LastGelHours { get; init; }

    public required double EndHours { get; init; }

    /// <summary>Hottest place at every step.</summary>
    public required IReadOnlyList<(double Hours, double HottestC)> Curve { get; init; }

    /// <summary>(stored + lost − released) / released.</summary>
    public required double EnergyMiss { get; init; }

    public required double LeastConversion { get; init; }

    public required double MostConversion { get; init; }

    /// <summary>Mean temperature of the resin at the end [°C].</summary>
    public required double MeanC { get; init; }

    public required int Steps { get; init; }
}

/// <summary>
/// Conduction and cure in rings: finite volumes, own assembly; time by a θ step (0.55) for conduction and the midpoint rule for the reaction, repeated until both agree.
/// It shares no line with Studio.Engine.Heat.
/// </summary>
internal sealed class RoundHeat
{
    private const double Theta = 0.55;

    // a body hotter than its room by this may change twice as much in a step
    private const double HastyK = 30;

    private readonly RoundBody body;
    private readonly RoundMatrix matrix;
    private readonly DrawnMatter matter;
    private readonly DrawnKinetics? kinetics;
    private readonly double[] volume;
    private readonly bool[] resin;
    private readonly double[] t;
    private readonly double[] next;
    private readonly double[] conversion;
    private readonly double[] done;
    private readonly double[] begun;
    private readonly double[] capacity;
    private readonly double[] source;
    private readonly double wallCapacity;

    /// <summary>Lays out a body, everything at one temperature.</summary>
    /// <param name="kinetics">Null for a body that only cools.</param>
    public RoundHeat(RoundBody body, DrawnMatter matter, DrawnKinetics? kinetics, DrawnWall wall, DrawnFilms films, double startC, double roomC)
    {
        (this.body, this.matter, this.kinetics) = (body, matter, kinetics);
        matrix = new(body, matter.ConductivityWPerMK, wall.ConductivityWPerMK, films, roomC);
        wallCapacity = wall.DensityKgPerM3 * wall.HeatCapacityJPerKgK;
        var n = matrix.Size;
        (volume, resin, t, next) = (new double[n], new bool[n], new double[n], new double[n]);
        (conversion, done, begun, capacity, source) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        for (var i = 0; i < body.Rings; i++)
        {
            for (var k = 0; k < body.LevelCount; k++)
            {
                (volume[body.Cell(i, k)], resin[body.Cell(i, k)]) = (body.VolumeM3(i, k), body.IsResin(i, k));
            }
        }

        Array.Fill(t, startC);
    }

    public double[] Celsius => t;

    /// <summary>Steps on to an end, or until it all gelled and has cooled.</summary>
    /// <param name="cooled">Stop once the hottest place's rise is below this share of its greatest; 0 to go to the end.</param>
    /// <param name="share">Changes allowed in one step, as a share of the usual ones.</param>
    public RoundTold Run(double untilHours, double gel, double roomC, double cooled, double share = 1)
    {
        var watch = new RoundWatch(body, resin, gel, kinetics is null ? null : new(body, kinetics, gel));
        watch.See(0, t, conversion);
        var (atS, endS, dt, steps) = (0.0, untilHours * 3600, Math.Min(untilHours * 3600 / 2000, 2.0), 0);
        double released = 0, stored = 0, lost = 0;
        while (atS < endS - 1e-9 && !(cooled > 0 && watch.Cooled(roomC, cooled)))
        {
            dt = Math.Min(dt, endS - atS);
            var measure = Step(dt, share * (1 + (Math.Max(0, watch.HottestC - roomC) / HastyK)));
            if (measure > 2)
            {
                dt /= 2;
                continue;
            }

            for (var c = 0; c < t.Length; c++)
            {
                released += source[c] * dt;
                stored += capacity[c] * (next[c] - t[c]);
            }

            lost += dt * matrix.Lost(t, next, Theta);
            watch.Step(atS, dt, t, next);
            Array.Copy(next, t, t.Length);
            Array.Copy(done, conversion, t.Length);
            (atS, steps) = (atS + dt, steps + 1);
            watch.See(atS / 3600, t, conversion);
            dt = Math.Min(endS / 150, dt * Math.Clamp(0.8 / Math.Max(measure, 1e-6), 0.5, 1.5));
        }

        return watch.Tell(t, conversion, volume, atS / 3600, released > 0 ? (stored + lost - released) / released : 0, steps);
    }

    // the greatest change, in what is allowed; 3 where it does not settle
    private double Step(double dt, double share)
    {
        for (var c = 0; c < t.Length; c++)
        {
            capacity[c] = volume[c] * (resin[c] ? matter.DensityKgPerM3 * matter.HeatCapacity(t[c], conversion[c]) : wallCapacity);
            begun[c] = resin[c] && kinetics is not null ? kinetics.Rate(conversion[c], t[c]) : 0;
            next[c] = t[c];
        }

        matrix.Prepare(capacity, dt, Theta);
        for (var turn = 0; turn < 12; turn++)
        {
            React(dt);
            if (matrix.Solve(t, next, source) < 2e-4)
            {
                return Measure(share);
            }
        }

        return 3;
    }

    private void React(double dt)
    {
        if (kinetics is null)
        {
            return;
        }

        for (var c = 0; c < t.Length; c++)
        {
            if (resin[c])
            {
                var rate = kinetics.Rate(Math.Min(1, conversion[c] + (dt / 2 * begun[c])), (t[c] + next[c]) / 2);
                done[c] = Math.Min(1, conversion[c] + (dt * rate));
                source[c] = volume[c] * matter.DensityKgPerM3 * matter.HeatJPerKg * (done[c] - conversion[c]) / dt;
            }
        }
    }

    private double Measure(double share)
    {
        double most = 0;
        for (var c = 0; c < t.Length; c++)
        {
            most = Math.Max(most, Math.Max(Math.Abs(next[c] - t[c]) / 0.6, (done[c] - conversion[c]) / 0.006));
        }

        return most / share;
    }
}
