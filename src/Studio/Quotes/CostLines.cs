using Studio.Commissions;
using Studio.Engine.Layers;
using Studio.Engine.Price;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Stores;

namespace Studio.Quotes;

/// <summary>What a price is drawn from: the design and its grams, the stores, the studio's rates.</summary>
public sealed record QuoteSource(Piece Piece, LayersResult Grams, Commission Commission, StudioSettings Settings, IReadOnlyList<Resin> Resins, IReadOnlyList<Material> Materials);

/// <summary>One thing that is bought for the piece.</summary>
/// <param name="Name">As it is called in the stores.</param>
/// <param name="Unit">What <paramref name="Used"/> and <paramref name="PackSize"/> are counted in.</param>
/// <param name="Used">How much the piece takes, waste included.</param>
/// <param name="PackSize">What a pack holds; null when the stores do not say.</param>
/// <param name="PackPrice">What a pack costs; null when the stores do not say.</param>
/// <param name="Missing">What to enter where, when a price is missing.</param>
public sealed record BoughtLine(string Name, string Unit, decimal Used, decimal? PackSize, decimal? PackPrice, string? Missing = null)
{
    /// <summary>The material it is priced from; null for a resin, or where the stores do not hold it.</summary>
    public int? MaterialId { get; init; }

    /// <summary>The resin it is priced from; null for anything else.</summary>
    public int? ResinId { get; init; }
}

/// <summary>A kind of cost that a design gives rise to. A new kind is a file, and a line in <see cref="CostLines.All"/>.</summary>
public interface ICostLine
{
    /// <summary>Open key kept with the line.</summary>
    string Kind { get; }

    /// <summary>Heading over its lines.</summary>
    string Label { get; }

    IEnumerable<BoughtLine> Bought(QuoteSource source) => [];

    IEnumerable<LabourLine> Labour(QuoteSource source) => [];
}

/// <summary>The kinds of cost, in the order they are shown.</summary>
public static class CostLines
{
    public const string Extra = "extra";
    public const string Equipment = "equipment";

    public static IReadOnlyList<ICostLine> All { get; } = [new ResinCost(), new InclusionCost(), new FilmCost(), new BoxCost(), new FittingCost(), new HandCost(), new PouringCost()];

    public static string Label(string kind) => All.FirstOrDefault(c => c.Kind == kind)?.Label ?? (kind == Equipment ? "Equipment" : "Other things bought");
}
