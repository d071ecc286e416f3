namespace Studio.Engine.Price;

/// <summary>Result of <c>calc price</c>; every amount rounded once, half away from zero, to the currency's minor unit.</summary>
public sealed record PriceResult
{
    public required string Currency { get; init; }

    public required IReadOnlyList<CostLine> Materials { get; init; }

    public required IReadOnlyList<CostLine> Labour { get; init; }

    public required IReadOnlyList<CostLine> Equipment { get; init; }

    /// <summary>Overhead charged by labour hours.</summary>
    public required decimal Overhead { get; init; }

    public required decimal Making { get; init; }

    public required decimal Remakes { get; init; }

    public required decimal Packaging { get; init; }

    public required decimal Delivery { get; init; }

    public required decimal Cost { get; init; }

    public required decimal NetPrice { get; init; }

    public required decimal Tax { get; init; }

    public required decimal Total { get; init; }

    public required decimal Fee { get; init; }

    public required decimal Profit { get; init; }

    public required decimal AchievedMarginPercent { get; init; }

    public required decimal BreakEvenTotal { get; init; }

    public required decimal Deposit { get; init; }

    public required decimal Balance { get; init; }
}

/// <summary>One line's cost.</summary>
public sealed record CostLine(string Name, decimal Cost);
