using System.Globalization;

namespace Studio.Engine.Tests.Fit;

public sealed class FitCoverageTests(ITestOutputHelper output)
{
    [Fact(Explicit = true)]
    public void Table() => FitTable.Run(int.Parse(Environment.GetEnvironmentVariable("RESINS") ?? "30", CultureInfo.InvariantCulture), output.WriteLine);
}
