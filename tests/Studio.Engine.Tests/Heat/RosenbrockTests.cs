using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Heat;

/// <summary>
/// The order conditions of a Rosenbrock method whose matrix is arbitrary (Hairer and Wanner II, section IV.7: those of order 3, and each of their terms with the exact
/// Jacobian's share left out), for the third and for the embedded second order; L-stable.
/// </summary>
public sealed class RosenbrockTests
{
    private static readonly double[][] A = RosenbrockTable.Place;
    private static readonly double[][] G = RosenbrockTable.Tilt;

    [Fact]
    public void Keeps_its_order_whatever_the_matrix()
    {
        var b = RosenbrockTable.Weight;
        Sum(i => b[i]).ShouldBe(1, 1e-12);
        Sum(i => b[i] * Row(A, i)).ShouldBe(0.5, 1e-12);
        Sum(i => b[i] * Row(G, i)).ShouldBe(0, 1e-12);
        Sum(i => b[i] * Row(A, i) * Row(A, i)).ShouldBe(1 / 3.0, 1e-12);
        Sum(i => b[i] * Sum(j => A[i][j] * Row(A, j))).ShouldBe(1 / 6.0, 1e-12);
        foreach (var (one, two) in new[] { (A, G), (G, A), (G, G) })
        {
            Sum(i => b[i] * Sum(j => one[i][j] * Row(two, j))).ShouldBe(0, 1e-12);
        }
    }

    [Fact]
    public void The_embedded_one_is_of_second_order_whatever_the_matrix()
    {
        var b = RosenbrockTable.Embedded;
        Sum(i => b[i]).ShouldBe(1, 1e-12);
        Sum(i => b[i] * Row(A, i)).ShouldBe(0.5, 1e-12);
        Sum(i => b[i] * Row(G, i)).ShouldBe(0, 1e-12);
    }

    [Fact]
    public void Ends_where_its_last_stage_ends_and_forgets_what_is_infinitely_fast()
    {
        // stiffly accurate: the last rows of A and Γ add up to the weights, so R(∞) = 0
        for (var j = 0; j < RosenbrockTable.Stages; j++)
        {
            (A[^1][j] + G[^1][j]).ShouldBe(RosenbrockTable.Weight[j], 1e-12);
        }

        A[^1].Sum().ShouldBe(1, 1e-12);
    }

    private static double Row(double[][] m, int i) => m[i].Sum();

    private static double Sum(Func<int, double> term) => Enumerable.Range(0, RosenbrockTable.Stages).Sum(term);
}
