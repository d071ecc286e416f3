using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.SignIn;

namespace Studio.Money;

/// <summary>Notes what came, and takes an entry back.</summary>
public sealed partial class PaymentsPart
{
    private const double Most = 10_000_000;

    private static readonly Dictionary<string, object?> AmountId = new(StringComparer.Ordinal) { ["id"] = "amount" };

    private PaymentForm form = new();
    private string wrong = "";
    private bool busy;
    private (int, int)? offered;

    [Parameter, EditorRequired]
    public int CommissionId { get; set; }

    [Parameter, EditorRequired]
    public CommissionMoney Money { get; set; } = default!;

    [Parameter, EditorRequired]
    public TimeZoneInfo Zone { get; set; } = default!;

    [Parameter]
    public EventCallback Changed { get; set; }

    [Inject]
    private MoneyBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    // the next amount is offered once for each state of the account; what a person typed meanwhile stays
    protected override void OnParametersSet()
    {
        var state = (CommissionId, Money.Payments.Count(p => !p.Withdrawn));
        if (offered != state)
        {
            offered = state;
            form = new PaymentForm { Amount = Money.Next, How = form.How };
        }
    }

    private Task PayAsync() => RunAsync(by => Book.PayAsync(CommissionId, form, by));

    private Task UnpayAsync(int id) => RunAsync(by => Book.UnpayAsync(id, by));

    private async Task RunAsync(Func<string, Task<Saved>> act)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        try
        {
            var saved = await act(await Who.NameAsync());
            wrong = saved.Words;
            offered = saved.Ok ? null : offered; // a form that was kept is used up
        }
        finally
        {
            busy = false;
        }

        await Changed.InvokeAsync();
    }
}
