namespace Studio.Engine.Price;

/// <summary>Input of <c>calc price</c>; names as in docs/calculations.md. Money in major units of the currency.</summary>
public sealed record PriceInput
{
    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    public IReadOnlyList<MaterialLine> Materials { get; init; } = [];

    public IReadOnlyList<LabourLine> Labour { get; init; } = [];

    public IReadOnlyList<EquipmentLine> Equipment { get; init; } = [];

    public OverheadSpec? Overhead { get; init; }

    public decimal RemakePercent { get; init; }

    public decimal Packaging { get; init; }

    public decimal Delivery { get; init; }

    public FeeSpec? Fee { get; init; }

    /// <summary>Profit as a share of the net price [%].</summary>
    public decimal MarginPercent { get; init; }

    public decimal TaxPercent { get; init; }

    /// <summary>The total is rounded up to a multiple of this; the currency's minor unit when null.</summary>
    public decimal? RoundTo { get; init; }

    public decimal DepositPercent { get; init; }
}

public sealed record MaterialLine(string Name, decimal Used, decimal PackSize, decimal PackPrice, decimal YieldPercent = 100);

public sealed record LabourLine(string Name, decimal Minutes, decimal RatePerHour);

public sealed record EquipmentLine(string Name, decimal Hours, decimal RatePerHour);

public sealed record OverheadSpec(decimal Monthly, decimal BenchHoursPerMonth);

/// <summary>Taken on what the customer pays.</summary>
public sealed record FeeSpec(decimal Percent, decimal Fixed);
