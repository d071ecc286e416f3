using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;
using Studio.Clock;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Settings;

namespace Studio.Shelf;

/// <summary>Home: what stands on the shelf, who needs hands next, and why. Redraws itself on every browser.</summary>
public sealed partial class ShelfPage(ShelfBook book, CustodyBook custodyBook, PieceTimeBook times, SettingsBook settings, News news, TimeProvider clock, IAuthorizationService rights) : IDisposable
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(30);

    private ShelfRows? rows;
    private string reckoned = "";
    private ShelfView? view;
    private CustodyCheck? custody;
    private IReadOnlyDictionary<int, Engine.Time.TimeResult> promises = new Dictionary<int, Engine.Time.TimeResult>();
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private IDisposable? ear;
    private ITimer? timer;
    private int asked;
    private bool gone;
    private bool makes;

    [CascadingParameter]
    private Task<AuthenticationState>? Signed { get; set; }

    public void Dispose()
    {
        gone = true;
        ear?.Dispose();
        timer?.Dispose();
    }

    protected override async Task OnInitializedAsync()
    {
        // listens before it reads: what is saved in between is not missed
        if (RendererInfo.IsInteractive)
        {
            ear = news.Listen(heard =>
            {
                // what the days rest on may have changed; money, photographs and notes change none
                reckoned = heard.Topic is News.Commission or News.Quote ? reckoned : "";
                _ = InvokeAsync(ReloadAsync);
            });
            timer = clock.CreateTimer(state => _ = InvokeAsync(Tick), null, Beat, Beat);
        }

        makes = Signed is not null && (await rights.AuthorizeAsync((await Signed).User, "making")).Succeeded;
        zone = await settings.ZoneAsync();
        await LoadAsync();
    }

    private async Task ReloadAsync()
    {
        if (!gone)
        {
            zone = await settings.ZoneAsync();
            await LoadAsync();
            StateHasChanged();
        }
    }

    // of two reads under way only the later counts
    private async Task LoadAsync()
    {
        var mine = ++asked;
        var read = await book.RowsAsync();
        var last = await custodyBook.LastAsync();
        if (mine == asked)
        {
            (rows, custody) = (read, last);
            view = book.Arrange(read, zone);
        }
    }

    // a whole shelf's days are reckoned after it stands there: what needs hands does not wait for them
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (rows is { } shown && Ground(shown) is var ground && reckoned != ground && !gone)
        {
            reckoned = ground;
            promises = await times.OfPiecesAsync([.. shown.Pieces.Where(p => p.NeededBy is not null).Select(p => p.Id)]);
            StateHasChanged();
        }
    }

    // what the days rest on, and the hour: news of other things reckons nothing anew
    private string Ground(ShelfRows shown) => string.Create(CultureInfo.InvariantCulture, $"{clock.GetUtcNow():yyyyMMddHH}:{string.Join(';', shown.Pieces.Select(p => $"{p.Id},{p.Stage},{p.NeededBy:O},{shown.Pours[p.Id].Count()},{shown.Layers[p.Id].Count()}"))}");

    // on the tag only what is late or tight: what is in time needs no words
    private InTime? Promise(Standee s) => promises.TryGetValue(s.Piece.Id, out var time)
        && InTime.Of(time, DateOnly.FromDateTime(Shell.Say.Local(view!.Now, zone))) is { } answer && (answer.Late || answer.Tight) ? answer : null;

    private void Tick()
    {
        if (!gone && rows is not null)
        {
            view = book.Arrange(rows, zone);
            StateHasChanged();
        }
    }

    // the bench is the makers' room; who may not enter it goes to the commission
    private string Way(ShelfPiece piece) => makes && piece.Stage != Pieces.Making.Finished
        ? string.Create(CultureInfo.InvariantCulture, $"/pieces/{piece.Id}/bench")
        : string.Create(CultureInfo.InvariantCulture, $"/commissions/{piece.CommissionId}");

    private string Hour(Standee s) => s.Next switch
    {
        { Urgency: Urgency.Overdue } => "overdue",
        { Urgency: Urgency.Closing, Until: { } until } => "by " + new ClockWords(view!.Now, zone).Clock(until),
        { Urgency: Urgency.Today, From: { } from } => new ClockWords(view!.Now, zone).Clock(from),
        _ => "now",
    };

    private static string Doing(Standee s) => s.Next.Kind switch
    {
        ActKind.WaitForWindow or ActKind.PourNext => "Pour " + s.Next.LayerName,
        ActKind.WindowClosed => "Abrade, then pour " + s.Next.LayerName,
        ActKind.WaitDemould or ActKind.Demould => "Demould",
        ActKind.WaitFullCure or ActKind.Finish => "Finish",
        ActKind.WaitReading => "Log the room",
        ActKind.Done => "Let it go home",
        _ => "See to it",
    };

    private static string For(ShelfPiece piece) => piece.Remembers.Length > 0 ? $"{piece.Number}, for {piece.Remembers}" : piece.Number;
}
