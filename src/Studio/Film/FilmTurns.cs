using Studio.Engine.Film;
using Studio.Engine.Moulds;
using Studio.Moulds;

namespace Studio.Film;

/// <summary>The ways a sheet can look in a mould.</summary>
/// <param name="Faces">Turns towards each face [°].</param>
/// <param name="Diagonals">Turns from corner to corner [°].</param>
/// <param name="ShownDegrees">The diagonal nearest to how it stands [°].</param>
internal sealed record FilmTurns(IReadOnlyList<double> Faces, IReadOnlyList<double> Diagonals, double ShownDegrees)
{
    /// <summary>The turns of a mould; null while there is none that can be used.</summary>
    public static FilmTurns? Of(Mould? mould, FilmSpec place) => mould is not null && MouldShapes.Make(mould.Spec) is { Ok: true } made
        ? new(FilmPlane.FaceTurns(made.Value), FilmPlane.DiagonalTurns(made.Value), Math.Round(FilmPlane.DiagonalDegrees(made.Value, place.TurnDegrees), 6))
        : null;
}
