using System.Globalization;

namespace Studio.Settings;

/// <summary>One number of the studio's settings: what it is called, what it is counted in, what it is for, and what it may be.</summary>
/// <param name="Key">The property of <see cref="StudioSettings"/>.</param>
/// <param name="Group">Under which heading it stands.</param>
/// <param name="Label">What it is called.</param>
/// <param name="Unit">% or h or g or days; <c>money</c> stands for the studio's currency; empty for a plain count.</param>
/// <param name="Helper">What it does, in a sentence.</param>
/// <param name="Least">Smallest value allowed.</param>
/// <param name="Most">Largest value allowed.</param>
public sealed record Figure(string Key, string Group, string Label, string Unit, string Helper, decimal Least, decimal Most)
{
    public const string Price = "What goes into a price";
    public const string Terms = "What a family is told";
    public const string Ready = "When it can be ready";
    public const string Waste = "What stays in the cup";

    private const decimal MostMoney = 10_000_000;

    public static IReadOnlyList<Figure> All { get; } =
    [
        new(nameof(StudioSettings.LabourRatePerHour), Price, "Your hour", "money", "What an hour of your hands costs, before any profit.", 0, MostMoney),
        new(nameof(StudioSettings.OverheadMonthly), Price, "Overheads a month", "money", "Rent, light, heat, insurance: what the studio costs when nothing is made.", 0, MostMoney),
        new(nameof(StudioSettings.BenchHoursPerMonth), Price, "Bench hours a month", "h", "Overheads are shared out over these hours.", 0.1m, 744),
        new(nameof(StudioSettings.MarginPercent), Price, "Margin", "%", "The part of the net price that is left after every cost.", 0, 99),
        new(nameof(StudioSettings.RemakePercent), Price, "Castings that must be made again", "%", "Out of a hundred castings, how many go wrong. Their cost is shared by the good ones.", 0, 99),
        new(nameof(StudioSettings.PackagingCost), Price, "Packaging", "money", "Box, tissue and card for one commission.", 0, MostMoney),
        new(nameof(StudioSettings.DeliveryCost), Price, "Delivery", "money", "What sending one commission costs you.", 0, MostMoney),
        new(nameof(StudioSettings.FeePercent), Price, "Payment fee, part of the total", "%", "What a card payment takes from the total.", 0, 50),
        new(nameof(StudioSettings.FeeFixed), Price, "Payment fee, fixed", "money", "What it takes on top, each time.", 0, MostMoney),
        new(nameof(StudioSettings.TaxPercent), Terms, "Tax on sales", "%", "Added to the net price. 0 when you are not registered.", 0, 100),
        new(nameof(StudioSettings.RoundTo), Terms, "Round totals up to", "money", "1 gives whole amounts, 5 gives steps of five.", 0.0001m, 10_000),
        new(nameof(StudioSettings.DepositPercent), Terms, "Deposit", "%", "The part of the total asked for when they say yes.", 0, 100),
        new(nameof(StudioSettings.QuoteValidDays), Terms, "A price stands for", "days", "After so many days a sent price is no longer promised.", 1, 365),
        new(nameof(StudioSettings.WorkMinutesPerDay), Ready, "Minutes a day for one piece", "min", "Of a working day, what your hands have for one piece; the rest is for the others.", 1, 1440),
        new(nameof(StudioSettings.ReserveDays), Ready, "Kept in hand", "days", "Added to the earliest day before you promise it, for the pour that must be made again.", 0, 365),
        new(nameof(StudioSettings.DeliveryDays), Ready, "On the way to them", "days", "From your door to theirs, where they do not collect it.", 0, 365),
        new(nameof(StudioSettings.WastePercent), Waste, "Resin that stays behind", "%", "Of every mix, what sticks to cups and sticks.", 0, 50),
        new(nameof(StudioSettings.WastePerBatchG), Waste, "And with every cup", "g", "A fixed loss for each cup that is mixed.", 0, 500),
    ];

    /// <summary>"must be between 0 and 99 %", as a sentence that names the figure.</summary>
    public string Range => string.Create(CultureInfo.InvariantCulture, $"{Label} must be between {Least:0.####} and {Most:#,0.##}{(Unit is "money" or "" ? "" : " " + Unit)}.");

    /// <summary>False for what is no number, too.</summary>
    public bool Allows(double value) => value >= (double)Least && value <= (double)Most;

    /// <summary>Puts a number where it belongs, in the property's own type.</summary>
    public void Write(StudioSettings settings, double value)
    {
        var property = typeof(StudioSettings).GetProperty(Key)!;
        property.SetValue(settings, Convert.ChangeType(value, property.PropertyType, CultureInfo.InvariantCulture));
    }

    /// <summary>The number for a field to show.</summary>
    public double Number(StudioSettings settings) => Convert.ToDouble(typeof(StudioSettings).GetProperty(Key)!.GetValue(settings), CultureInfo.InvariantCulture);
}
