using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Heat;

/// <summary>
/// Frank-Kamenetskii's critical values: the greatest δ for which −∇²u = δ eᵘ/L², u = 0 at the face, has an answer. Slab 0.878, cylinder 2.000, sphere 3.322
/// (Frank-Kamenetskii, Diffusion and Heat Transfer in Chemical Kinetics), square rod 1.702 (Parks 1961; restated in our study as 1.7017).
/// Found from the solver's own matrices, not from a formula.
/// </summary>
public sealed class CriticalTests
{
    [Theory]
    [InlineData("slab", 0.878458)]
    [InlineData("cylinder", 2.0)]
    [InlineData("sphere", 3.32199)]
    [InlineData("rod", 1.7017)]
    [InlineData("rod by eighths", 1.7017)]
    public void Run_away_begins_where_theory_says(string body, double critical)
    {
        var (coarse, fine) = (Critical(body, 6), Critical(body, 12));
        var found = fine + ((fine - coarse) / 3); // Richardson
        found.ShouldBe(critical, 0.002 * critical, $"{coarse} {fine} {found}");
        Math.Abs(fine - critical).ShouldBeLessThan(Math.Abs(coarse - critical) / 3, $"{coarse} {fine} {found}");
    }

    // along the branch by the middle's u: δ rises to its greatest and falls again
    private static double Critical(string body, int cells)
    {
        var (input, grid) = ExactBodies.Make(body, cells, 1e7, 1, 0);
        var stage = new HeatStage(grid, input, 1);
        var factor = stage.Factor(1e12, new double[stage.Nodes.Length]); // so long that heat capacity does not matter
        var (low, high) = (0.8, 2.2);
        var u = new double[stage.Nodes.Length];
        for (var n = 0; n < 30; n++)
        {
            var (a, b) = (low + ((high - low) * 0.382), low + ((high - low) * 0.618));
            (low, high) = Delta(stage, factor, u, a) > Delta(stage, factor, u, b) ? (low, b) : (a, high);
        }

        return Delta(stage, factor, u, (low + high) / 2);
    }

    // u ← δ K⁻¹(V eᵘ), with δ such that the greatest u is what it should be
    private static double Delta(HeatStage stage, BandedCholesky factor, double[] u, double greatest)
    {
        double delta = 0;
        for (var turn = 0; turn < 400; turn++)
        {
            var w = new double[u.Length];
            for (var p = 0; p < stage.PointNode.Length; p++)
            {
                // conductivity 0.2; the factor's share of time as above
                w[stage.PointNode[p]] += 0.2 * 1e12 / (ExactBodies.HalfM * ExactBodies.HalfM) * stage.PointVolume[p] * Math.Exp(u[stage.PointNode[p]]);
            }

            factor.Solve(w);
            var before = delta;
            delta = greatest / w.Max();
            for (var n = 0; n < u.Length; n++)
            {
                u[n] = delta * w[n];
            }

            if (Math.Abs(delta - before) < 1e-9 * delta)
            {
                return delta;
            }
        }

        throw new InvalidOperationException($"δ did not settle at u = {greatest}.");
    }
}
