using Microsoft.AspNetCore.Components;
using Studio.Accounts;
using Studio.Data;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Quotes;

/// <summary>Sent, agreed, paid.</summary>
public partial class QuoteActs
{
    private static readonly string[] Ways = ["by e-mail", "in person", "by telephone", "on the signed paper", "by letter"];
    private static readonly Dictionary<string, object?> AmountId = new(StringComparer.Ordinal) { ["id"] = "amount" };
    private static readonly Dictionary<string, object?> ReasonId = new(StringComparer.Ordinal) { ["id"] = "send-reason" };

    private string who = "";
    private string how = Ways[0];
    private string paidHow = "by bank transfer";
    private decimal? amount;
    private decimal? typed;
    private string payKey = NewKey();
    private string reason = "";
    private string wrong = "";
    private bool busy;
    private int shown;

    [Parameter, EditorRequired]
    public QuoteView View { get; set; } = default!;

    [Parameter]
    public bool Dirty { get; set; }

    [Parameter]
    public EventCallback Done { get; set; }

    [Inject]
    private QuoteBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    private IReadOnlyList<Payment> Paid => View.Payments;

    private string Today => Say.Local(View.Now, View.Zone).ToString("d MMMM yyyy", System.Globalization.CultureInfo.GetCultureInfo("en-GB"));

    private string Mail => MailLink.To(
        View.Commission.Customer!.Email,
        View.Commission.Remembers.Length > 0 ? $"Your piece in memory of {View.Commission.Remembers}" : "Your piece",
        $"Dear {View.Commission.Customer.Name},\n\nhere is what we would make, and what it would cost: {Say.Money(View.Quote.Result?.Total ?? 0, View.Quote.Currency)}. The paper with this mail says all of it; the offer stands until {View.Quote.ValidUntil.ToString("d MMMM yyyy", System.Globalization.CultureInfo.GetCultureInfo("en-GB"))}.\n\nIf anything should be different, tell us.")!;

    protected override void OnParametersSet()
    {
        if (shown != View.Quote.Id || who.Length == 0)
        {
            (shown, who) = (View.Quote.Id, View.Commission.Customer?.Name ?? "");
        }

        // nothing paid yet: the deposit is what comes; after it, the balance
        amount = typed ?? (Paid.Any(p => !p.Withdrawn) ? View.Quote.Result?.Balance : View.Quote.Result?.Deposit);
    }

    private static string NewKey() => Guid.NewGuid().ToString("N");

    private async Task<bool> RunAsync(Func<string, Task<Saved>> act)
    {
        if (busy)
        {
            return false;
        }

        busy = true;
        var saved = await act(await Who.NameAsync());
        busy = false;
        wrong = saved.Words;
        await Done.InvokeAsync();
        return saved.Ok;
    }

    private Task SendAsync() => RunAsync(by => Book.SendAsync(View.Quote.Id, View.Quote.Version, by, reason));

    private Task AcceptAsync() => RunAsync(by => Book.AcceptAsync(View.Quote.Id, View.Quote.Version, who, how, by));

    private Task DeclineAsync() => RunAsync(by => Book.DeclineAsync(View.Quote.Id, View.Quote.Version, by));

    private Task UnpayAsync(int id) => RunAsync(by => Book.UnpayAsync(id, by));

    private async Task PayAsync()
    {
        var kind = Paid.Any(p => !p.Withdrawn && p.Kind == "deposit") ? "balance" : "deposit";
        if (await RunAsync(by => Book.PayAsync(View.Quote.Id, kind, amount ?? 0, paidHow, payKey, by)))
        {
            (payKey, typed) = (NewKey(), null);
            OnParametersSet();
        }
    }
}
