using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Data;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Shell;
using Studio.Stores;

namespace Studio.Heat;

/// <summary>Bubbles of a design; worked out when the part is opened and after each change while it is.</summary>
public sealed partial class BubblePart(PotBook potBook, BubbleBook book) : IDisposable
{
    private IReadOnlyList<PotLine> pots = [];
    private IReadOnlyList<BubbleSight> sights = [];
    private double bubbleMm = 0.5;
    private double roomC = HeatRoom.AssumedC;
    private readonly UnreadNumbers reckoned = new(); // the bubble is asked about and not kept
    private bool opened;
    private PieceDesk? of;

    private PotLine? Chosen => pots.FirstOrDefault(p => p.Pot.Id == Session.Piece.PotId);

    public void Dispose() => Session.Changed -= Again;

    protected override void OnInitialized() => Session.Changed += Again;

    // the studio's pots and the room are read anew with the design
    protected override async Task OnParametersSetAsync()
    {
        if (opened && !ReferenceEquals(of, Session.Desk))
        {
            (opened, of) = (false, Session.Desk);
            await OpenAsync();
        }
    }

    private void Again()
    {
        if (opened)
        {
            _ = InvokeAsync(LookAsync);
        }
    }

    private async Task OpenAsync()
    {
        if (!opened)
        {
            (opened, of) = (true, Session.Desk);
            pots = await potBook.ListAsync();
            await LookAsync();
        }
    }

    private async Task LookAsync()
    {
        if (Session.Figures.Result is { } result && result.Layers.Count == Session.Piece.Layers.Count)
        {
            (roomC, sights) = await book.SightsAsync(Session.Piece, result, bubbleMm);
            StateHasChanged();
        }
    }

    private Task TakeAsync(double? mm)
    {
        bubbleMm = mm ?? 0.5;
        return LookAsync();
    }

    private void PotAsync(ChangeEventArgs e) =>
        Session.Do("", () => Session.Piece.PotId = int.TryParse((string?)e.Value, CultureInfo.InvariantCulture, out var id) ? id : null);

    private string? Fits(Pot pot) => BubbleBook.Fits(pot, Session.Piece.Mould);
}

/// <summary>Reads what bubbles hang on.</summary>
public sealed class BubbleBook(IDbContextFactory<StudioDb> factory)
{
    /// <summary>Whether a mould goes into a pot, by its widest inner size and its wall on both sides; null where a size is not known.</summary>
    public static string? Fits(Pot pot, Mould? mould)
    {
        ArgumentNullException.ThrowIfNull(pot);
        if (pot is not { InnerDiameterMm: { } across, InnerHeightMm: { } high } || mould is null || Engine.Moulds.MouldShapes.Make(mould.Spec) is not { Ok: true } made)
        {
            return null;
        }

        var wall = mould.Wall?.ThicknessMm ?? WallMaterials.UsualMm;
        var surface = made.Value.Surface();
        var corners = Enumerable.Range(0, surface.VertexCount).Select(surface.Vertex).Max(p => Math.Sqrt((p.X * p.X) + (p.Y * p.Y)));
        var (wide, tall) = (2 * (corners + wall), made.Value.HeightMm + (mould.Wall?.FloorMm ?? wall));
        return wide <= across && tall <= high
            ? string.Create(CultureInfo.InvariantCulture, $"The mould, about {wide:0} mm across its corners and {tall:0} mm high with its wall, goes into the pot.")
            : string.Create(CultureInfo.InvariantCulture, $"The mould does not go into the pot: it is about {wide:0} mm across its corners and {tall:0} mm high with its wall, and the pot has {across:0} by {high:0} mm.");
    }

    /// <summary>The room that was reckoned with [°C], and each layer.</summary>
    public async Task<(double RoomC, IReadOnlyList<BubbleSight> Sights)> SightsAsync(Piece piece, Engine.Layers.LayersResult result, double bubbleMm)
    {
        await using var db = await factory.CreateDbContextAsync();
        var room = piece.RoomPlan?.DayC ?? (await RoomBook.NowAsync(db, piece.StandsIn))?.Celsius ?? HeatRoom.AssumedC;
        List<BubbleSight> sights = [];
        foreach (var (i, layer) in piece.Layers.Index())
        {
            if (layer.Resin is { } resin)
            {
                var known = await KnownCures.OfAsync(db, layer.ResinId, "");
                sights.Add(BubbleFigures.Of($"Layer {i + 1}, {layer.Name}", resin, result.Layers[i], known.Row?.State.Best().Kinetics, KnownCures.Likely(known), room, bubbleMm));
            }
        }

        return (room, sights);
    }
}
