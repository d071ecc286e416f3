using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Quotes;

/// <summary>Sent, agreed, paid.</summary>
public partial class QuoteActs
{
    private static readonly string[] Ways = ["by e-mail", "in person", "by telephone", "on the signed paper", "by letter"];
    private static readonly Dictionary<string, object?> ReasonId = new(StringComparer.Ordinal) { ["id"] = "send-reason" };

    private string who = "";
    private string how = Ways[0];
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

    /// <summary>The page's own numbers: while one of them cannot be read, the price it belongs to does not go out.</summary>
    [CascadingParameter]
    private UnreadNumbers Unread { get; set; } = new();

    [Inject]
    private QuoteBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

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
    }

    private async Task RunAsync(Func<string, Task<Saved>> act)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        var saved = await act(await Who.NameAsync());
        busy = false;
        wrong = saved.Words;
        await Done.InvokeAsync();
    }

    private Task SendAsync() => Unread.Refuse() ? Task.CompletedTask : RunAsync(by => Book.SendAsync(View.Quote.Id, View.Quote.Version, by, reason));

    private Task AcceptAsync() => RunAsync(by => Book.AcceptAsync(View.Quote.Id, View.Quote.Version, who, how, by));

    private Task DeclineAsync() => RunAsync(by => Book.DeclineAsync(View.Quote.Id, View.Quote.Version, by));
}
