using Studio.Engine;
using Studio.Engine.Price;

namespace Studio.Quotes;

/// <summary>A quote while it is being worked on: every figure can be overridden, and the reckoning follows.</summary>
public sealed class QuoteForm
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Currency { get; set; } = "GBP";

    public List<BoughtRow> Bought { get; set; } = [];

    public List<WorkRow> Work { get; set; } = [];

    public decimal OverheadMonthly { get; set; }

    public decimal BenchHoursPerMonth { get; set; } = 1;

    public decimal RemakePercent { get; set; }

    public decimal Packaging { get; set; }

    public decimal Delivery { get; set; }

    public decimal FeePercent { get; set; }

    public decimal FeeFixed { get; set; }

    public decimal MarginPercent { get; set; }

    public decimal TaxPercent { get; set; }

    public decimal RoundTo { get; set; }

    public decimal DepositPercent { get; set; }

    public DateOnly? ValidUntil { get; set; }

    public string FamilyWords { get; set; } = "";

    /// <summary>The day that the maker promises; null while none is promised. What the family wishes is the commission's.</summary>
    public DateOnly? PromiseOn { get; set; }

    /// <summary>A key of <see cref="DeliveryTerms"/> as it was chosen; empty while nobody chose.</summary>
    public string DeliveryAs { get; set; } = DeliveryTerms.Open;

    /// <summary>What a layer is called to the family, by its name in the design: moved it keeps its words, renamed it is called by its own again.</summary>
    public Dictionary<string, string> LayerWords { get; set; } = [];

    /// <summary>What to enter where, for lines that have no price.</summary>
    public IEnumerable<Finding> Missing => Bought.Where(b => !b.Priced).Select(b =>
        new Finding("no-price", Severity.Stop, b.Name, $"{(b.Name.Length > 0 ? b.Name : "A line")} has no price, so this quote is incomplete and can't be sent. Enter its pack under Stores and take the design's amounts again, or enter the pack here.", "our rule"));

    public PriceInput Input() => new()
    {
        Currency = Currency,
        Materials = [.. Bought.Where(b => b.Priced).Select(b => new MaterialLine(Name(b.Name), b.Used, b.PackSize!.Value, b.PackPrice!.Value))],
        Labour = [.. Work.Where(w => w.Kind != CostLines.Equipment).Select(w => new LabourLine(Name(w.Name), w.Minutes, w.RatePerHour))],
        Equipment = [.. Work.Where(w => w.Kind == CostLines.Equipment).Select(w => new EquipmentLine(Name(w.Name), w.Minutes / 60, w.RatePerHour))],
        Overhead = OverheadMonthly > 0 ? new OverheadSpec(OverheadMonthly, BenchHoursPerMonth) : null,
        RemakePercent = RemakePercent,
        Packaging = Packaging,
        Delivery = Delivery,
        Fee = new FeeSpec(FeePercent, FeeFixed),
        MarginPercent = MarginPercent,
        TaxPercent = TaxPercent,
        RoundTo = RoundTo > 0 ? RoundTo : null,
        DepositPercent = DepositPercent,
    };

    private static string Name(string typed) => string.IsNullOrWhiteSpace(typed) ? "Not named yet" : typed.Trim();
}

/// <summary>Something bought, as it stands in the form.</summary>
public sealed class BoughtRow
{
    public string Kind { get; set; } = CostLines.Extra;

    public string Name { get; set; } = "";

    public string Unit { get; set; } = "piece";

    public decimal Used { get; set; }

    public decimal? PackSize { get; set; }

    public decimal? PackPrice { get; set; }

    /// <summary>The material it was priced from; null for what was added by hand and in quotes of before 0.4.</summary>
    public int? MaterialId { get; set; }

    /// <summary>The resin it was priced from.</summary>
    public int? ResinId { get; set; }

    public bool Priced => PackSize > 0 && PackPrice is not null;
}

/// <summary>Work or the use of a machine, as it stands in the form.</summary>
public sealed class WorkRow
{
    public string Kind { get; set; } = "hand";

    public string Name { get; set; } = "";

    public decimal Minutes { get; set; }

    public decimal RatePerHour { get; set; }
}
