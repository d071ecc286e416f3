namespace Studio.Bench.Tools;

internal static class QuoteCost
{
    public static void Run()
    {
    }
}
