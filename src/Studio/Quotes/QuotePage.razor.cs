using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Data;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Quotes;

/// <summary>The maker's own reckoning of one price; the family sees only its paper.</summary>
public sealed partial class QuotePage : IDisposable
{
    private readonly UnreadNumbers unread = new();
    private QuoteView? view;
    private QuoteForm form = new();
    private Reckoning reckoning = new(null, [], []);
    private IDisposable? ear;
    private bool loaded;
    private bool dirty;
    private bool asked;
    private bool busy;
    private string wrong = "";
    private string keptWords = "";

    [Parameter]
    public int Id { get; set; }

    [Inject]
    private QuoteBook Book { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    private string DraftKey => $"quote-{Id}";

    private DateOnly Today => DateOnly.FromDateTime(Say.Local(view!.Now, view.Zone));

    public void Dispose() => ear?.Dispose();

    protected override void OnInitialized() => ear = News.Listen(n =>
    {
        if (n.Topic is News.Quote or News.Piece or News.Stores)
        {
            _ = InvokeAsync(async () =>
            {
                await LoadAsync();
                StateHasChanged();
            });
        }
    });

    protected override Task OnParametersSetAsync()
    {
        dirty = false;
        return LoadAsync();
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // asked once the page has read: the first render may come before that
        var first = !asked && view is not null;
        asked = asked || first;
        if (first && view is { Draft: true } && await Script.DraftAsync<QuoteForm>(DraftKey) is { } kept && kept.Version == form.Version)
        {
            form = kept;
            Recompute();
            StateHasChanged();
        }
    }

    // what is being typed is never replaced by news from elsewhere
    private async Task LoadAsync()
    {
        view = await Book.ViewAsync(Id);
        loaded = true;
        if (view is not null && !dirty)
        {
            form = JsonColumn.Read<QuoteForm>(JsonColumn.Write(view.Quote.Form))!;
            (form.Id, form.Version, form.ValidUntil) = (Id, view.Quote.Version, view.Quote.ValidUntil);
            reckoning = view.Draft || view.Quote.Result is null ? Reckoning.Of(form) : new(view.Quote.Result, view.Quote.Lines, []);
        }
    }

    private void Recompute()
    {
        dirty = true;
        keptWords = "Not kept yet.";
        reckoning = Reckoning.Of(form);
    }

    private async Task ChangedAsync()
    {
        Recompute();
        await Script.KeepDraftAsync(DraftKey, form);
    }

    private async Task KeepAsync()
    {
        if (unread.Refuse())
        {
            return;
        }

        busy = true;
        var saved = await Book.KeepAsync(form, await Who.NameAsync());
        busy = false;
        wrong = saved.Words;
        if (saved.Ok)
        {
            dirty = false;
            await Script.DropDraftAsync(DraftKey);
            await LoadAsync();
            keptWords = "Kept.";
        }
    }

    private async Task TakeDesignAsync()
    {
        if (await Book.WithDesignAsync(form) is { } taken)
        {
            form = taken;
            wrong = "";
            Recompute();
        }
        else
        {
            wrong = "The drawing can't be worked out just now: it has figures that need another look.";
        }
    }

    private async Task RenewAsync()
    {
        busy = true;
        var renewed = await Book.RenewAsync(Id, await Who.NameAsync());
        busy = false;
        wrong = renewed.Words;
        if (renewed.Ok)
        {
            Nav.NavigateTo($"/quotes/{renewed.Id}");
        }
    }
}
