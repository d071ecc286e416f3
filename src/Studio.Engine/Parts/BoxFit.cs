namespace Studio.Engine.Parts;

/// <summary>Sizes along x, y and z [mm].</summary>
public sealed record BoxSize(double XMm, double YMm, double ZMm)
{
    internal double[] Sides => [XMm, YMm, ZMm];
}

/// <summary>A box as it stands: its nearest corner, and its size as turned [mm].</summary>
public sealed record BoxPlace(double XMm, double YMm, double ZMm, BoxSize Size);

/// <summary>
/// Whether a few boxes find room in another, turned in any of their six ways. Exact: any two boxes that do not meet lie apart along one
/// of three axes, so every choice of 'left of', 'in front of' and 'below' for every pair is tried, and given up as soon as it is too long.
/// </summary>
public sealed class BoxFit
{
    /// <summary>More are not tried: the choices grow beyond patience.</summary>
    public const int Most = 4;

    private const int MostSteps = 3_000_000;

    private readonly BoxSize[] boxes;
    private readonly double[] limit;
    private readonly double[][] size;
    private readonly (int A, int B)[] pairs;
    private readonly bool[,,] before;
    private double[][] found = [];
    private int steps;

    private BoxFit(IReadOnlyList<BoxSize> boxes, double[] limit)
    {
        (this.boxes, this.limit) = ([.. boxes], limit);
        size = new double[boxes.Count][];
        pairs = [.. Enumerable.Range(0, boxes.Count).SelectMany(b => Enumerable.Range(0, b).Select(a => (a, b)))];
        before = new bool[3, boxes.Count, boxes.Count];
    }

    /// <summary>Places for the boxes, in their order; null when there are none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More than <see cref="Most"/> boxes.</exception>
    public static IReadOnlyList<BoxPlace>? Into(IReadOnlyList<BoxSize> boxes, BoxSize room)
    {
        Require.Within(boxes.Count, 0, Most, "boxes");
        var fit = new BoxFit(boxes, room.Sides);
        return fit.Turn(0) ? fit.Places() : null;
    }

    /// <summary>A length along one axis (0, 1, 2) with which the boxes fit, the other two as they are: the least one [mm]; null when none helps.</summary>
    public static double? Least(IReadOnlyList<BoxSize> boxes, BoxSize room, int axis)
    {
        Require.Within(boxes.Count, 0, Most, "boxes");
        var fit = new BoxFit(boxes, room.Sides);
        fit.limit[axis] = boxes.Sum(b => b.Sides.Max());
        double? least = null;
        while (fit.Turn(0))
        {
            least = Enumerable.Range(0, boxes.Count).Max(i => fit.found[axis][i] + fit.size[i][axis]);
            fit.limit[axis] = least.Value - (10 * Rules.TouchMm);
            Array.Clear(fit.before);
        }

        return least;
    }

    private List<BoxPlace> Places() => [.. size.Select((s, i) => new BoxPlace(found[0][i], found[1][i], found[2][i], new BoxSize(s[0], s[1], s[2])))];

    // chooses a way of lying for each box in turn: as given first
    private bool Turn(int box)
    {
        if (box == boxes.Length)
        {
            return Part(0, [new double[box], new double[box], new double[box]]);
        }

        foreach (var turned in Ways(boxes[box].Sides))
        {
            if (Enumerable.Range(0, 3).All(axis => turned[axis] <= limit[axis] + Rules.TouchMm))
            {
                size[box] = turned;
                if (Turn(box + 1))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static IEnumerable<double[]> Ways(double[] s) =>
        new[] { new[] { s[0], s[1], s[2] }, [s[1], s[0], s[2]], [s[0], s[2], s[1]], [s[2], s[0], s[1]], [s[1], s[2], s[0]], [s[2], s[1], s[0]] }
            .DistinctBy(w => (w[0], w[1], w[2]));

    // puts each pair apart along one axis, one before the other
    private bool Part(int pair, double[][] at)
    {
        if (pair == pairs.Length)
        {
            found = at;
            return true;
        }

        if (++steps > MostSteps)
        {
            return false;
        }

        var (a, b) = pairs[pair];
        for (var axis = 0; axis < 3; axis++)
        {
            if (Try(pair, axis, a, b, at) || Try(pair, axis, b, a, at))
            {
                return true;
            }
        }

        return false;
    }

    private bool Try(int pair, int axis, int first, int second, double[][] at)
    {
        before[axis, first, second] = true;
        if (Push(axis, at[axis]) is { } pushed)
        {
            var next = (double[][])at.Clone();
            next[axis] = pushed;
            if (Part(pair + 1, next))
            {
                return true;
            }
        }

        before[axis, first, second] = false;
        return false;
    }

    // everything as near to the corner as its forerunners allow; null when something leaves the room
    private double[]? Push(int axis, double[] from)
    {
        var at = (double[])from.Clone();
        for (var moved = true; moved;)
        {
            moved = false;
            for (var i = 0; i < at.Length; i++)
            {
                for (var j = 0; j < at.Length; j++)
                {
                    if (before[axis, i, j] && at[j] < at[i] + size[i][axis])
                    {
                        (at[j], moved) = (at[i] + size[i][axis], true);
                        if (at[j] + size[j][axis] > limit[axis] + Rules.TouchMm)
                        {
                            return null;
                        }
                    }
                }
            }
        }

        return at;
    }
}
