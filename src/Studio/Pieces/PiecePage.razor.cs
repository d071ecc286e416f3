using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;
using Studio.Data;
using Studio.Drawing;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Pieces;

/// <summary>The design of one piece: the section drawing and its layers.</summary>
public sealed partial class PiecePage : IAsyncDisposable
{
    private static readonly TimeSpan DraftAfter = TimeSpan.FromMilliseconds(600);

    private DesignSession? session;
    private DesignDraft? draft;
    private IDisposable? ear;
    private ITimer? draftTimer;
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private string units = "metric";
    private string? refused;
    private string by = "studio";
    private DateTime? keptAt;
    private int draftOf;
    private bool missing;
    private bool newer;
    private bool turned;
    private bool busy;

    [Parameter]
    public int Id { get; set; }

    [Inject]
    private PieceBook Book { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    [Inject]
    private ISnackbar Notes { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    private DateTime Now => Clock.GetUtcNow().UtcDateTime;

    private string DraftKey => $"piece-{Id}";

    private string KeptWords => session switch
    {
        { Dirty: true } or { Unread.Any: true } => "Not kept yet",
        _ when keptAt is { } at => $"Kept {Say.When(at, zone, Now)}",
        _ => "Kept",
    };

    // the top of the list is the top of the drawing
    private IEnumerable<int> Order => turned ? Enumerable.Range(0, session!.Piece.Layers.Count) : Enumerable.Range(0, session!.Piece.Layers.Count).Reverse();

    protected override async Task OnParametersSetAsync()
    {
        if (session?.Piece.Id == Id)
        {
            return;
        }

        (units, zone, by) = ((await Settings.ReadAsync()).Units, await Settings.ZoneAsync(), await Who.NameAsync());
        var desk = await Book.DeskAsync(Id);
        missing = desk is null;
        if (desk is not null)
        {
            Sit(new DesignSession(desk));
        }

        ear ??= News.Listen(n =>
        {
            if (n.Topic is News.Pour or News.Keepsake or News.Stores || (n.Topic is News.Piece && (n.Id is null || n.Id == Id)))
            {
                _ = InvokeAsync(HearAsync);
            }
        });
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (session?.Piece.Id != Id || draftOf == Id)
        {
            return;
        }

        draftOf = Id;
        // what was typed before a connection was lost lies in the browser
        draft = DesignDraft.Read(await Script.DraftTextAsync(DraftKey));
        if (draft is not null && (draft.Design == session.Desk.ReadAs || !session.TakeUp(draft.Design) || !session.Dirty))
        {
            draft = null;
        }

        StateHasChanged();
    }

    public async ValueTask DisposeAsync()
    {
        ear?.Dispose();
        if (draftTimer is not null)
        {
            await draftTimer.DisposeAsync();
            await DraftAsync(); // leaving in the middle of a word loses nothing
        }
    }

    private void Sit(DesignSession next)
    {
        session = next;
        session.Changed += () =>
        {
            refused = null;
            draftTimer ??= Clock.CreateTimer(_ => _ = InvokeAsync(DraftAsync), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
            draftTimer.Change(DraftAfter, Timeout.InfiniteTimeSpan);
            StateHasChanged();
        };
    }

    private async Task GoAsync(string room)
    {
        if (session is { Dirty: false, Unread.Any: false } || await KeepAsync())
        {
            Nav.NavigateTo($"/pieces/{Id}/{room}");
        }
    }

    private async Task OpenPaperAsync(string address)
    {
        if (session is { Dirty: false, Unread.Any: false } || await KeepAsync())
        {
            Nav.NavigateTo(address, forceLoad: true);
        }
    }

    private Dictionary<string, object> PartParameters(DesignSession s) => new(StringComparer.Ordinal)
    {
        [nameof(PiecePart.Session)] = s,
        [nameof(PiecePart.Units)] = units,
        [nameof(PiecePart.OpenPaper)] = EventCallback.Factory.Create<string>(this, OpenPaperAsync),
    };

    private void Moved(LineMove move) => session?.MoveLine(move.Layer, move.ToMm, move.Last);

    private async Task PickAsync(int layer)
    {
        session!.Open = layer;
        session.Show();
        await Script.InvokeVoidAsync("studio.focus", $"#layer-{layer} .head");
    }

    private void Remove(int index)
    {
        var name = session!.Piece.Layers[index].Name;
        session.Remove(index);
        Notes.Add($"“{name}” is taken out.", Severity.Normal, o =>
        {
            o.Action = "Undo";
            o.OnClick = _ => InvokeAsync(session.Undo);
        });
    }

    private async Task DuplicateAsync()
    {
        busy = true;
        var saved = await Book.DuplicateAsync(Id, by);
        busy = false;
        if (saved.Ok)
        {
            Nav.NavigateTo($"/pieces/{saved.Id}");
        }
        else
        {
            refused = saved.Words;
        }
    }

    private Task LetGoAsync() => StageAsync(Book.LetGoAsync, "The piece is let go.", undo: true);

    private Task TakeUpAsync() => StageAsync(Book.TakeUpAsync, "The piece is taken up again.", undo: false);

    private async Task StageAsync(Func<int, string, Task<Saved>> act, string words, bool undo)
    {
        busy = true;
        var saved = await act(Id, by);
        busy = false;
        refused = saved.Ok ? null : saved.Words;
        if (!saved.Ok)
        {
            return;
        }

        await RereadAsync(mine: true);
        Notes.Add(words, Severity.Normal, o =>
        {
            o.Action = undo ? "Undo" : null;
            o.OnClick = undo ? _ => InvokeAsync(TakeUpAsync) : null;
        });
    }
}
