using Microsoft.AspNetCore.Components;
using Studio.Papers;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Keepsakes;

/// <summary>A commission's parcel: ticks, who takes it, and the paper that lies in it.</summary>
public sealed partial class GoingHomePage
{
    private GoingHomeView? view;
    private GoingHomeForm form = new();
    private IReadOnlyList<IssuedPaper> papers = [];
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private string wrong = "";
    private int paper;
    private bool busy;
    private bool loaded;

    [Parameter]
    public int CommissionId { get; set; }

    [Inject]
    private GoingHomeBook Book { get; set; } = default!;

    [Inject]
    private IssuedBook Issued { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    protected override async Task OnParametersSetAsync()
    {
        await LoadAsync();
        loaded = true;
    }

    private async Task LoadAsync()
    {
        view = await Book.ReadAsync(CommissionId);
        zone = await Settings.ZoneAsync();
        papers = [.. (await Issued.OfCommissionAsync(CommissionId)).Where(p => p.Kind == PaperKinds.Return)];
        form = new() { Rows = [.. (view?.Here ?? []).Select(l => new GoingHomeRow { KeepsakeId = l.Id, Goes = l.Yet.Length == 0 })], PieceIds = [.. (view?.Pieces ?? []).Where(p => p.Finished).Select(p => p.Id)], Whom = view?.Customer ?? "" };
    }

    private void Tick(int pieceId, bool goes)
    {
        form.PieceIds.Remove(pieceId);
        if (goes)
        {
            form.PieceIds.Add(pieceId);
        }
    }

    private async Task GoAsync()
    {
        if (busy)
        {
            return;
        }

        busy = true;
        try
        {
            var saved = await Book.GoAsync(CommissionId, form, await Who.NameAsync());
            wrong = saved.Words;
            if (saved.Ok)
            {
                paper = saved.Id;
                await LoadAsync();
            }
        }
        finally
        {
            busy = false;
        }
    }
}
