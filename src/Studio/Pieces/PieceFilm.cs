using Studio.Data.Files;
using Studio.Engine.Film;

namespace Studio.Pieces;

/// <summary>A photograph printed on film and set into the piece.</summary>
/// <param name="Name">What the maker calls it.</param>
public sealed record PieceFilm(string Name)
{
    /// <summary>Where it stands.</summary>
    public FilmSpec Place { get; init; } = new();

    /// <summary>The picture; null until one is chosen.</summary>
    public FilmPicture? Picture { get; init; }

    /// <summary>How the picture is made ready; the picture itself is never changed.</summary>
    public PictureRecipe Recipe { get; init; } = PictureRecipe.AsItIs;

    /// <summary>Printed on the side that faces away, so mirrored on paper.</summary>
    public bool PrintMirrored { get; init; }

    /// <summary>How many are printed; a spare costs little film.</summary>
    public int Prints { get; init; } = 1;
}

/// <summary>A picture in the photograph store.</summary>
/// <param name="Hash">Its name in the store.</param>
/// <param name="WidthPx">Upright [px].</param>
/// <param name="HeightPx">Upright [px].</param>
/// <param name="From">Where it came from, for people: a keepsake's number or a file's name.</param>
public sealed record FilmPicture(string Hash, int WidthPx, int HeightPx, string From);
