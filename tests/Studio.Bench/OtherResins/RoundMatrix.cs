namespace Studio.Bench.Tools.OtherResins;

/// <summary>Conduction between the cells of a round body and to its room: across rings exact for a parabola over the radius.</summary>
internal sealed class RoundMatrix
{
    private readonly List<(int Low, int High, double WPerK)> links = [];
    private readonly double[] toRoom;
    private readonly double[] right;
    private readonly Band band;
    private readonly double roomC;
    private double[] capacity = [];
    private double dt;
    private double theta;

    public RoundMatrix(RoundBody body, double resinK, double wallK, DrawnFilms films, double roomC)
    {
        this.roomC = roomC;
        (toRoom, right) = (new double[Size = body.Rings * body.LevelCount], new double[Size]);
        for (var i = 0; i < body.Rings; i++)
        {
            for (var k = 0; k < body.LevelCount; k++)
            {
                var (own, plan) = (K(i, k), body.Plan(i));
                var high = (body.Levels[k + 1] - body.Levels[k]) / 2;
                var face = body.Radii[i + 1];
                var (side, wide) = (2 * Math.PI * face * high * 2, ((face * face) - body.Square(i)) / 2 / face);
                if (i + 1 < body.Rings)
                {
                    Link(body.Cell(i, k), body.Cell(i + 1, k), side / ((wide / own) + ((body.Square(i + 1) - (face * face)) / 2 / face / K(i + 1, k))));
                }
                else
                {
                    Room(body.Cell(i, k), side, wide / own, films.Side);
                }

                if (k + 1 < body.LevelCount)
                {
                    Link(body.Cell(i, k), body.Cell(i, k + 1), plan / ((high / own) + ((body.Levels[k + 2] - body.Levels[k + 1]) / 2 / K(i, k + 1))));
                }
                else
                {
                    Room(body.Cell(i, k), plan, high / own, films.Top);
                }

                if (k == 0)
                {
                    Room(body.Cell(i, k), plan, high / own, films.Bottom);
                }
            }
        }

        band = new(Size, Math.Min(body.Rings, body.LevelCount));

        double K(int ring, int level) => body.IsResin(ring, level) ? resinK : wallK;
    }

    public int Size { get; }

    /// <summary>Factors capacity/dt + θ·K.</summary>
    public void Prepare(double[] heatCapacity, double stepS, double share)
    {
        (capacity, dt, theta) = (heatCapacity, stepS, share);
        band.Clear();
        for (var c = 0; c < Size; c++)
        {
            band.Add(c, c, (capacity[c] / dt) + (theta * toRoom[c]));
        }

        foreach (var (low, high, w) in links)
        {
            band.Add(low, low, theta * w);
            band.Add(high, high, theta * w);
            band.Add(high, low, -theta * w);
        }

        band.Factor();
    }

    /// <summary>Solves for the next temperatures with sources [W]; returns how far they moved from what stood there [K].</summary>
    public double Solve(double[] t, double[] next, double[] source)
    {
        for (var c = 0; c < Size; c++)
        {
            right[c] = (capacity[c] / dt * t[c]) + source[c] + (toRoom[c] * (roomC - ((1 - theta) * t[c])));
        }

        foreach (var (low, high, w) in links)
        {
            var flow = (1 - theta) * w * (t[high] - t[low]);
            right[low] += flow;
            right[high] -= flow;
        }

        band.Solve(right);
        double moved = 0;
        for (var c = 0; c < Size; c++)
        {
            moved = Math.Max(moved, Math.Abs(next[c] - right[c]));
            next[c] = right[c];
        }

        return moved;
    }

    /// <summary>To the room over a step [W].</summary>
    public double Lost(double[] t, double[] next, double share)
    {
        double sum = 0;
        for (var c = 0; c < Size; c++)
        {
            sum += toRoom[c] * ((share * next[c]) + ((1 - share) * t[c]) - roomC);
        }

        return sum;
    }

    private void Link(int one, int other, double wPerK) => links.Add((Math.Min(one, other), Math.Max(one, other), wPerK));

    private void Room(int cell, double area, double resistance, double film) => toRoom[cell] += film <= 0 ? 0 : area / (resistance + (1 / film));
}
