using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Stores;

/// <summary>The ledger of pressure pots.</summary>
public sealed partial class PotsPage
{
    private static readonly (string Key, string Words)[] Orders = [("name", "Name, A to Z"), ("due", "Test due first")];

    [Inject]
    private PotBook Book { get; set; } = default!;

    protected override Task<IReadOnlyList<PotLine>> FetchAsync() => Book.ListAsync(retired: true);

    protected override string Words(PotLine line) => line.Pot.Name;

    protected override string NameOf(PotLine line) => line.Pot.Name;

    protected override bool IsRetired(PotLine line) => line.Pot.Retired;

    protected override Task<Saved> TurnAsync(PotLine line, bool retired, string by) => Book.RetireAsync(line.Pot.Id, retired, by);

    protected override IEnumerable<PotLine> Ordered(IEnumerable<PotLine> lines) =>
        Order == "due" ? lines.OrderBy(p => p.Pot.TestDueOn ?? DateOnly.MinValue) : lines.OrderBy(p => p.Pot.Name, StringComparer.OrdinalIgnoreCase);
}

/// <summary>How pots are spoken of.</summary>
public static class PotWords
{
    /// <summary>A gauge pressure, in bar and in the psi that many gauges show.</summary>
    public static string Bar(double bar) => string.Create(CultureInfo.InvariantCulture, $"{bar:0.##} bar ({bar / Engine.Bubbles.Squeeze.BarPerPsi:0} psi)");

    public static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB"));
}
