using Studio.Engine.Film;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Pieces;

namespace Studio.Film;

/// <summary>A first photograph that fits, for the maker to change.</summary>
public static class FilmStart
{
    private const double Wider = 1.05;

    /// <summary>Corner to corner, from the top of the first layer to the box for the lights or the rim.</summary>
    /// <param name="piece">With its mould.</param>
    /// <param name="result">Its layers' levels; null while they are not known.</param>
    public static PieceFilm In(Piece piece, LayersResult? result)
    {
        var from = result is { Layers.Count: > 1 } ? result.Layers[0].ToMm : 0;
        var to = piece.Former?.FromMm;
        var name = piece.Sheets.Count == 0 ? "The photograph" : FormattableString.Invariant($"Photograph {piece.Sheets.Count + 1}");
        return new PieceFilm(name)
        {
            Place = new FilmSpec { FromMm = to <= from ? 0 : from, ToMm = to, TabMm = to is null ? 10 : 0, Over = StandsOver(piece) },
        };
    }

    // what is wider above than below is cast on its head
    private static bool StandsOver(Piece piece) =>
        piece.Mould is { } m && MouldShapes.Make(m.Spec) is { Ok: true } made && made.Value.AreaMm2(made.Value.HeightMm * 0.95) > Wider * made.Value.AreaMm2(made.Value.HeightMm * 0.05);
}
