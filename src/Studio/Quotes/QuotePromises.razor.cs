using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Commissions;
using Studio.Engine.Time;
using Studio.Pieces;

namespace Studio.Quotes;

/// <summary>The day, the way to them and the family's names of the layers.</summary>
public partial class QuotePromises
{
    private bool wantsPrice;

    [Parameter, EditorRequired]
    public QuoteForm Form { get; set; } = new();

    [Parameter, EditorRequired]
    public Commission Commission { get; set; } = default!;

    [Parameter, EditorRequired]
    public IReadOnlyList<PieceLayer> Layers { get; set; } = [];

    /// <summary>When the piece can be with them; null where it is not reckoned.</summary>
    [Parameter]
    public TimeResult? Time { get; set; }

    [Parameter]
    public EventCallback Changed { get; set; }

    private static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.GetCultureInfo("en-GB"));

    private Task Deliver(string? chosen) => Set(() =>
    {
        Form.DeliveryAs = chosen ?? DeliveryTerms.Open;
        wantsPrice = chosen == DeliveryTerms.Priced;
        Form.Delivery = wantsPrice ? Form.Delivery : 0;
    });

    private Task Set(Action change)
    {
        change();
        return Changed.InvokeAsync();
    }
}
