namespace Studio.Engine.Heat;

/// <summary>Integrals over one cell: trilinear in space, or bilinear in a ring's section (weighted by the radius; the factor 2π is left out everywhere).</summary>
internal static class HeatCell
{
    private static readonly double[] Gauss = [-1 / Math.Sqrt(3), 1 / Math.Sqrt(3)];

    /// <summary>∫∇Nᵢ·∇Nⱼ dV [m] and ∫Nᵢ dV [m³].</summary>
    public static (double[,] Stiffness, double[] Volume) Integrate(HeatGrid grid, int[] corners) =>
        corners.Length == 4 ? Ring(grid, corners) : Brick(grid, corners);

    /// <summary>∫Nᵢ dA over one side, for that side's corners [m²].</summary>
    public static (int[] Corners, double[] Area) Face(HeatGrid grid, int[] corners, HeatSide side)
    {
        var local = Local(corners.Length == 4, side);
        int[] own = [.. local.Select(l => corners[l])];
        return (own, own.Length == 2 ? Band(grid, own) : Patch(grid, own));
    }

    private static int[] Local(bool ring, HeatSide side) => (ring, side) switch
    {
        (true, HeatSide.In) => [0, 2],
        (true, HeatSide.Out) => [1, 3],
        (true, HeatSide.Under) => [0, 1],
        (true, _) => [2, 3],
        (_, HeatSide.In) => [0, 2, 4, 6],
        (_, HeatSide.Out) => [1, 3, 5, 7],
        (_, HeatSide.Near) => [0, 1, 4, 5],
        (_, HeatSide.Far) => [2, 3, 6, 7],
        (_, HeatSide.Under) => [0, 1, 2, 3],
        _ => [4, 5, 6, 7],
    };

    private static (double[,] Stiffness, double[] Volume) Brick(HeatGrid g, int[] c)
    {
        var volume = new double[8];
        Span<double> stiff = stackalloc double[64];
        Span<double> gradient = stackalloc double[24];
        stiff.Clear();
        foreach (var u in Gauss)
        {
            foreach (var v in Gauss)
            {
                foreach (var w in Gauss)
                {
                    var det = Gradient(g, c, u, v, w, gradient);
                    for (var a = 0; a < 8; a++)
                    {
                        volume[a] += Shape(a, u, v, w) * det;
                        var (x, y, z) = (det * gradient[3 * a], det * gradient[(3 * a) + 1], det * gradient[(3 * a) + 2]);
                        for (var b = 0; b <= a; b++)
                        {
                            stiff[(8 * a) + b] += (x * gradient[3 * b]) + (y * gradient[(3 * b) + 1]) + (z * gradient[(3 * b) + 2]);
                        }
                    }
                }
            }
        }

        var stiffness = new double[8, 8];
        for (var a = 0; a < 8; a++)
        {
            for (var b = 0; b <= a; b++)
            {
                stiffness[a, b] = stiffness[b, a] = stiff[(8 * a) + b];
            }
        }

        return (stiffness, volume);
    }

    private static double Shape(int a, double u, double v, double w) =>
        (1 + (Sign(a, 1) * u)) * (1 + (Sign(a, 2) * v)) * (1 + (Sign(a, 4) * w)) / 8;

    private static double Right(double det) => det > 0 ? det
        : throw new InvalidOperationException("The heat equation could not be solved: its grid folds over itself, as where a former is wider than the mould.");

    private static int Sign(int a, int bit) => (a & bit) == 0 ? -1 : 1;

    // derivatives in space by the inverse of the mapping; returns its determinant
    private static double Gradient(HeatGrid g, int[] c, double u, double v, double w, Span<double> gradient)
    {
        Span<double> j = stackalloc double[9];
        Span<double> d = stackalloc double[24];
        j.Clear();
        for (var a = 0; a < 8; a++)
        {
            var (su, sv, sw) = (Sign(a, 1), Sign(a, 2), Sign(a, 4));
            d[3 * a] = su * (1 + (sv * v)) * (1 + (sw * w)) / 8;
            d[(3 * a) + 1] = sv * (1 + (su * u)) * (1 + (sw * w)) / 8;
            d[(3 * a) + 2] = sw * (1 + (su * u)) * (1 + (sv * v)) / 8;
            for (var r = 0; r < 3; r++)
            {
                j[3 * r] += d[(3 * a) + r] * g.X[c[a]];
                j[(3 * r) + 1] += d[(3 * a) + r] * g.Y[c[a]];
                j[(3 * r) + 2] += d[(3 * a) + r] * g.Z[c[a]];
            }
        }

        var (m0, m1, m2) = ((j[4] * j[8]) - (j[5] * j[7]), (j[5] * j[6]) - (j[3] * j[8]), (j[3] * j[7]) - (j[4] * j[6]));
        var det = (j[0] * m0) + (j[1] * m1) + (j[2] * m2);
        Span<double> inverse =
        [
            m0 / det, ((j[2] * j[7]) - (j[1] * j[8])) / det, ((j[1] * j[5]) - (j[2] * j[4])) / det,
            m1 / det, ((j[0] * j[8]) - (j[2] * j[6])) / det, ((j[2] * j[3]) - (j[0] * j[5])) / det,
            m2 / det, ((j[1] * j[6]) - (j[0] * j[7])) / det, ((j[0] * j[4]) - (j[1] * j[3])) / det,
        ];
        for (var a = 0; a < 8; a++)
        {
            for (var x = 0; x < 3; x++)
            {
                gradient[(3 * a) + x] = (inverse[3 * x] * d[3 * a]) + (inverse[(3 * x) + 1] * d[(3 * a) + 1]) + (inverse[(3 * x) + 2] * d[(3 * a) + 2]);
            }
        }

        return Right(det);
    }

    private static (double[,] Stiffness, double[] Volume) Ring(HeatGrid g, int[] c)
    {
        var stiffness = new double[4, 4];
        var volume = new double[4];
        Span<double> du = stackalloc double[4];
        Span<double> dv = stackalloc double[4];
        Span<double> n = stackalloc double[4];
        foreach (var u in Gauss)
        {
            foreach (var v in Gauss)
            {
                double xu = 0, xv = 0, zu = 0, zv = 0, r = 0;
                for (var a = 0; a < 4; a++)
                {
                    var (su, sv) = (Sign(a, 1), Sign(a, 2));
                    (n[a], du[a], dv[a]) = ((1 + (su * u)) * (1 + (sv * v)) / 4, su * (1 + (sv * v)) / 4, sv * (1 + (su * u)) / 4);
                    xu += du[a] * g.X[c[a]];
                    xv += dv[a] * g.X[c[a]];
                    zu += du[a] * g.Z[c[a]];
                    zv += dv[a] * g.Z[c[a]];
                    r += n[a] * g.X[c[a]];
                }

                var det = (xu * zv) - (xv * zu);
                var weight = Right(det) * r;
                for (var a = 0; a < 4; a++)
                {
                    volume[a] += n[a] * weight;
                    var (ax, az) = (((du[a] * zv) - (dv[a] * zu)) / det, ((dv[a] * xu) - (du[a] * xv)) / det);
                    for (var b = 0; b < 4; b++)
                    {
                        var (bx, bz) = (((du[b] * zv) - (dv[b] * zu)) / det, ((dv[b] * xu) - (du[b] * xv)) / det);
                        stiffness[a, b] += weight * ((ax * bx) + (az * bz));
                    }
                }
            }
        }

        return (stiffness, volume);
    }

    private static double[] Band(HeatGrid g, int[] c)
    {
        var length = Math.Sqrt(Square(g.X[c[1]] - g.X[c[0]]) + Square(g.Z[c[1]] - g.Z[c[0]]));
        return [length * ((2 * g.X[c[0]]) + g.X[c[1]]) / 6, length * (g.X[c[0]] + (2 * g.X[c[1]])) / 6];
    }

    private static double[] Patch(HeatGrid g, int[] c)
    {
        var area = new double[4];
        Span<double> a = stackalloc double[3];
        Span<double> b = stackalloc double[3];
        foreach (var u in Gauss)
        {
            foreach (var v in Gauss)
            {
                a.Clear();
                b.Clear();
                for (var k = 0; k < 4; k++)
                {
                    var (su, sv) = (Sign(k, 1), Sign(k, 2));
                    var (du, dv) = (su * (1 + (sv * v)) / 4, sv * (1 + (su * u)) / 4);
                    (a[0], a[1], a[2]) = (a[0] + (du * g.X[c[k]]), a[1] + (du * g.Y[c[k]]), a[2] + (du * g.Z[c[k]]));
                    (b[0], b[1], b[2]) = (b[0] + (dv * g.X[c[k]]), b[1] + (dv * g.Y[c[k]]), b[2] + (dv * g.Z[c[k]]));
                }

                var size = Math.Sqrt(Square((a[1] * b[2]) - (a[2] * b[1])) + Square((a[2] * b[0]) - (a[0] * b[2])) + Square((a[0] * b[1]) - (a[1] * b[0])));
                for (var k = 0; k < 4; k++)
                {
                    area[k] += (1 + (Sign(k, 1) * u)) * (1 + (Sign(k, 2) * v)) / 4 * size;
                }
            }
        }

        return area;
    }

    private static double Square(double x) => x * x;
}
