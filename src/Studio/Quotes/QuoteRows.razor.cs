using Microsoft.AspNetCore.Components;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>The lines of a price.</summary>
public partial class QuoteRows
{
    [Parameter, EditorRequired]
    public QuoteForm Form { get; set; } = new();

    [Parameter, EditorRequired]
    public Reckoning Reckoning { get; set; } = new(null, [], []);

    /// <summary>A sent quote's numbers stay as they are.</summary>
    [Parameter]
    public bool Fixed { get; set; }

    [Parameter]
    public EventCallback Changed { get; set; }

    private IEnumerable<string> Kinds => CostLines.All.Select(c => c.Kind).Append(CostLines.Extra).Append(CostLines.Equipment)
        .Where(k => Form.Bought.Exists(b => b.Kind == k) || Form.Work.Exists(w => w.Kind == k));

    private static decimal Money(double? typed) => (decimal)(typed ?? 0);

    private string CostOf(BoughtRow row) => row.Priced ? Cost(BoughtLine(row)) : "no price";

    private string CostOf(WorkRow row) => Cost(WorkLine(row));

    private string How(BoughtRow row) => row.Priced ? BoughtLine(row)?.HowComputed ?? "" : "Enter what a pack holds and costs.";

    private string How(WorkRow row) => WorkLine(row)?.HowComputed ?? "";

    private string Cost(QuoteLine? line) => line is null ? "" : Say.Money(line.Cost, Form.Currency);

    // the reckoning's lines stand in the form's order: what is bought and priced, then hands, then machines
    private QuoteLine? BoughtLine(BoughtRow row) => Reckoning.Lines.ElementAtOrDefault(Form.Bought.Where(b => b.Priced).ToList().IndexOf(row));

    private QuoteLine? WorkLine(WorkRow row) => Reckoning.Lines.ElementAtOrDefault(
        Form.Bought.Count(b => b.Priced) + Form.Work.OrderBy(w => w.Kind == CostLines.Equipment).ToList().IndexOf(row));

    private Task Set(Action change)
    {
        change();
        return Changed.InvokeAsync();
    }

    private Task AddBought() => Set(() => Form.Bought.Add(new BoughtRow { Used = 1, PackSize = 1, PackPrice = 0 }));

    private Task AddMachine() => Set(() => Form.Work.Add(new WorkRow { Kind = CostLines.Equipment, Minutes = 30 }));
}
