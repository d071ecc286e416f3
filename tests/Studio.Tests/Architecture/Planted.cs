#pragma warning disable MA0047, CA1050, IDE0130, CA1852, CA5394, IDE0051, MA0011
// Violations planted on purpose: the architecture tests must see each of them, or they prove nothing.
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Quotes;

namespace Studio.Moulds
{
    /// <summary>A mould must not know of quotes.</summary>
    internal sealed class PlantedArrow
    {
        public static int Peek(Quote quote) => quote.VersionNo;

        public static async Task<int> PeekLaterAsync(Task<Quote> quote) => (await quote).VersionNo;
    }
}

namespace Studio.Engine.Layers
{
    /// <summary>The engine must not read files, clocks or cultures.</summary>
    internal sealed class PlantedFile
    {
        public static string Read(string path) => System.IO.File.ReadAllText(path);
    }

    internal sealed class PlantedClock
    {
        public static DateTime Now() => DateTime.UtcNow;
    }

    internal sealed class PlantedCulture
    {
        public static string Name() => System.Globalization.CultureInfo.CurrentCulture.Name;
    }
}

namespace Studio.Shelf
{
    /// <summary>A page must not touch the database.</summary>
    internal sealed class PlantedDataPage : ComponentBase
    {
        [Inject]
        private IDbContextFactory<StudioDb> Factory { get; set; } = default!;

        protected override async Task OnInitializedAsync()
        {
            await using var db = await Factory.CreateDbContextAsync();
            await db.Set<Quote>().CountAsync();
        }
    }

    /// <summary>A component must not ask the engine, whatever it is called.</summary>
    internal sealed class PlantedHeatCorner : ComponentBase
    {
        public bool Ok { get; set; }

        protected override void OnParametersSet() => Ok = Engine.Layers.LayersCalculation.Run(new() { Mould = new("", new Dictionary<string, double>(StringComparer.Ordinal)), Layers = [], Resins = new Dictionary<string, Engine.Resins.ResinSpec>(StringComparer.Ordinal) }).Ok;
    }

    /// <summary>A page must not compute.</summary>
    internal sealed class PlantedSumPage : ComponentBase
    {
        public double Side { get; set; } = 3;

        protected override void OnParametersSet() => Side = Math.Sqrt(Side) * Math.Cos(Side);
    }
}
