using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Studio.Engine.Film;
using Studio.Pieces;

namespace Studio.Film;

/// <summary>One photograph of a piece: what it comes to, and what can be decided about it.</summary>
public sealed partial class PhotographFilm
{
    private string? refusal;
    private bool sending;

    [Parameter, EditorRequired]
    public DesignSession Session { get; set; } = null!;

    /// <summary>Its place in the piece's list.</summary>
    [Parameter, EditorRequired]
    public int Index { get; set; }

    [Parameter]
    public string Units { get; set; } = "metric";

    [Parameter, EditorRequired]
    public IReadOnlyList<FilmPicture> Pictures { get; set; } = [];

    /// <summary>Takes in a picture that is sent.</summary>
    [Parameter, EditorRequired]
    public Func<IBrowserFile, Task<(FilmPicture? Picture, string? Refusal)>> TakeIn { get; set; } = null!;

    /// <summary><c>A4</c>, <c>Letter</c>, or empty for the studio's own.</summary>
    [Parameter]
    public string Paper { get; set; } = "";

    /// <summary>Keeps the design, then opens an address.</summary>
    [Parameter]
    public EventCallback<string> OpenPaper { get; set; }

    private PieceFilm Sheet => Session.Piece.Sheets[Index];

    private FilmSpec Place => Sheet.Place;

    private FilmFigures Figures => Session.Figures.Sheets[Index];

    private string Path => FilmRules.Path(Index);

    private IEnumerable<(string Label, string Address)> Papers
    {
        get
        {
            var (piece, index) = (Session.Piece.Id.ToString(CultureInfo.InvariantCulture), Index.ToString(CultureInfo.InvariantCulture));
            var paper = Paper.Length > 0 ? "&paper=" + Paper : "";
            yield return ("print at true size", $"/papers/photographs/{piece}.pdf?only={index}{paper}");
            yield return ("print the outline alone", $"/papers/photographs/{piece}.pdf?only={index}&outline=true{paper}");
            yield return ("take the outline as SVG", $"/papers/photographs/{piece}/{index}.svg");
        }
    }

    private void Put(string kind, PieceFilm now) => Session.Do(kind.Length == 0 ? "" : Path + "." + kind, () => Session.Piece.Sheets[Index] = now);

    // flat sheets lie on a layer from the start; all other numbers stay as they were
    private void Stand(string placement)
    {
        var onLayer = Place.HeightMm == 0 && Session.Good is { Layers.Count: > 0 } good ? good.Layers[0].ToMm : Place.HeightMm;
        Put("", Sheet with { Place = Place with { Placement = placement, HeightMm = placement == FilmPlacement.Flat ? onLayer : Place.HeightMm } });
    }

    private async Task SendAsync(InputFileChangeEventArgs e)
    {
        (sending, refusal) = (true, null);
        StateHasChanged();
        try
        {
            var (picture, why) = await TakeIn(e.File);
            refusal = why;
            if (picture is not null)
            {
                Put("", Sheet with { Picture = picture });
            }
        }
        catch (IOException)
        {
            refusal = "The picture did not arrive whole. Send it again.";
        }
        finally
        {
            sending = false;
        }
    }
}
