using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Drawing;
using Studio.Moulds;
using Studio.SignIn;

namespace Studio.Pieces;

/// <summary>Begins a piece: its name, its mould by the look of it, and what it begins with.</summary>
public sealed partial class NewPiecePage
{
    private const double PicturePx = 110;

    private PieceChoices? choices;
    private IReadOnlyList<(Mould Mould, SectionView? View)> moulds = [];
    private string name = "";
    private string words = "";
    private string start = PieceStart.Colours;
    private string? wrong;
    private SectionScale scale = new(1);
    private int mouldId;
    private bool missing;
    private bool tried;
    private bool busy;

    [Parameter]
    public int CommissionId { get; set; }

    [Inject]
    private PieceBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    private string? NameWrong => string.IsNullOrWhiteSpace(name) ? "Give the piece a name, such as “Heather pyramid”." : null;

    private IEnumerable<(Mould Mould, SectionView? View)> Found => moulds.Where(m => Hit(m.Mould, m.View));

    protected override async Task OnParametersSetAsync()
    {
        choices = await Book.ChoicesAsync(CommissionId);
        missing = choices is null;
        moulds = [.. (choices?.Moulds ?? []).Select(m => (m, SectionView.For(m.Spec, [], toleranceMm: SectionView.SmallMm)))];
        scale = SectionScale.For(moulds.Select(m => m.View), PicturePx);
        start = choices?.Resins.Count > 0 ? start : PieceStart.Empty;
    }

    private static string Sizes(SectionView view) => string.Create(CultureInfo.InvariantCulture, $"{view.MouldName.ToLowerInvariant()}, {view.WidestMm:0.#} × {view.HeightMm:0.#} mm");

    private bool Hit(Mould mould, SectionView? view) =>
        words.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(w => $"{mould.Name} {(view is null ? "" : Sizes(view))}".Contains(w, StringComparison.OrdinalIgnoreCase));

    private async Task StartAsync()
    {
        tried = true;
        if (NameWrong is not null || mouldId == 0 || busy)
        {
            return;
        }

        busy = true;
        var saved = await Book.CreateAsync(CommissionId, name, mouldId, start, await Who.NameAsync());
        busy = false;
        wrong = saved.Ok ? null : saved.Words;
        if (saved.Ok)
        {
            Nav.NavigateTo($"/pieces/{saved.Id}");
        }
    }
}
