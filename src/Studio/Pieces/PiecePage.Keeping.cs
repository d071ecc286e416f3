using Microsoft.JSInterop;
using Studio.Shell;

namespace Studio.Pieces;

/// <summary>How a design is kept: in the browser while it is worked on, in the database when the maker says so.</summary>
public sealed partial class PiecePage
{
    private async Task DraftAsync()
    {
        try
        {
            if (session is not { Dirty: true } s)
            {
                await DropDraftAsync();
                return;
            }

            await Script.KeepDraftTextAsync($"piece-{s.Piece.Id}", new DesignDraft(Now, s.Desk.ReadAs, DesignText.Write(s.Piece)).Write());
        }
        catch (JSDisconnectedException)
        {
            // the browser is away; the session itself still holds everything
        }
    }

    private async Task DropDraftAsync()
    {
        draft = null;
        await Script.DropDraftAsync(DraftKey);
    }

    private async Task<bool> KeepAsync()
    {
        if (session is not { } s || busy)
        {
            return false;
        }

        if (s.Unread.Refuse())
        {
            return false;
        }

        busy = true;
        var saved = await Book.KeepAsync(s.Piece, s.Desk.ReadAs, by);
        busy = false;
        (refused, newer) = saved.Ok ? (null, false) : (saved.Words, saved.IsStale);
        if (saved.Ok)
        {
            keptAt = Now;
            await RereadAsync(mine: false);
        }

        return saved.Ok;
    }

    private async Task RereadAsync(bool mine)
    {
        if (await Book.DeskAsync(Id) is { } desk && session is { } s)
        {
            s.Reread(desk, mine);
            (refused, newer) = (null, false);
            await DraftAsync();
        }
    }

    // another browser kept a design or poured a layer: a page without anything typed of its own follows
    private async Task HearAsync()
    {
        if (session is { Dirty: false, Unread.Any: false } && !busy)
        {
            await RereadAsync(mine: false);
            StateHasChanged();
        }
    }

    private async Task LeaveDraftAsync()
    {
        await DropDraftAsync();
        await RereadAsync(mine: false);
        keptAt = null;
    }
}
