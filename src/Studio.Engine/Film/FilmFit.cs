using System.Runtime.InteropServices;
using Studio.Engine.Meshes;

namespace Studio.Engine.Film;

/// <summary>What an edge of a sheet meets.</summary>
public enum EdgeMeets
{
    /// <summary>The mould's wall or floor, near enough to be carried by it.</summary>
    Wall,

    /// <summary>The wall, but with a gap that carries nothing.</summary>
    Gap,

    /// <summary>The top of a layer, on which it stands.</summary>
    Layer,

    /// <summary>The open side: the rim, or the height the sheet ends at.</summary>
    Open,

    /// <summary>Nothing.</summary>
    Nothing,
}

/// <summary>One straight edge of a sheet and what it meets.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FilmEdge(FilmPoint From, FilmPoint To, EdgeMeets Meets)
{
    /// <summary>Length [mm].</summary>
    public double LengthMm => Math.Sqrt(((To.UMm - From.UMm) * (To.UMm - From.UMm)) + ((To.VMm - From.VMm) * (To.VMm - From.VMm)));

    /// <summary>True where the edge bears weight.</summary>
    public bool Carries => Meets is EdgeMeets.Wall or EdgeMeets.Layer;
}

/// <summary>Resin in front of a sheet and what it does to the eye.</summary>
/// <param name="ResinMm">From the middle of the sheet square to it to the wall [mm].</param>
/// <param name="LooksMm">How deep it seems to lie: depth / n [mm].</param>
/// <param name="NearestMm">The same for the densest resin of the usual range [mm].</param>
/// <param name="FarthestMm">The same for the lightest resin of the usual range [mm].</param>
/// <param name="LargerPercent">How much larger it looks from <see cref="FilmLook.EyeMm"/> away [%].</param>
/// <param name="Flat">False where the face in front is curved or stands at an angle to the sheet, so that it acts as a lens or a wedge besides.</param>
public sealed record FilmLook(double ResinMm, double LooksMm, double NearestMm, double FarthestMm, double LargerPercent, bool Flat)
{
    /// <summary>Refractive index of cured clear epoxy, typical.</summary>
    public const double Typical = 1.52;

    /// <summary>Smallest of the usual range, at 589.3 nm.</summary>
    public const double Lowest = 1.50;

    /// <summary>Largest of the usual range, at 589.3 nm.</summary>
    public const double Highest = 1.57;

    /// <summary>An arm's length: where the eye is thought to be, before the face [mm].</summary>
    public const double EyeMm = 500;

    /// <summary>Looks through so much flat resin.</summary>
    public static FilmLook Through(double resinMm, bool flat) => new(
        resinMm, resinMm / Typical, resinMm / Highest, resinMm / Lowest, 100 * (((EyeMm + resinMm) / (EyeMm + (resinMm / Typical))) - 1), flat);
}

/// <summary>A sheet worked out. Where it cannot stand its outlines are empty and a stop says why.</summary>
public sealed record FilmFit
{
    /// <summary>Its plane.</summary>
    public required FilmPlane Plane { get; init; }

    /// <summary>What the plane cuts out of the mould between the two heights, nothing set in.</summary>
    public IReadOnlyList<FilmArea> Cut { get; init; } = [];

    /// <summary>The sheet as it stays in the piece.</summary>
    public IReadOnlyList<FilmArea> Body { get; init; } = [];

    /// <summary>The sheet as it is cut from film, its holding strip included.</summary>
    public IReadOnlyList<FilmArea> Film { get; init; } = [];

    /// <summary>Where the picture may be printed: <see cref="Body"/> less the margin that seals it.</summary>
    public IReadOnlyList<FilmArea> Picture { get; init; } = [];

    /// <summary>Lines along which the holding strip is cut away later.</summary>
    public IReadOnlyList<(FilmPoint From, FilmPoint To)> CutAway { get; init; } = [];

    /// <summary>Edges of <see cref="Body"/> and what they meet.</summary>
    public IReadOnlyList<FilmEdge> Edges { get; init; } = [];

    /// <summary>Resin in front of it; null without a sheet.</summary>
    public FilmLook? Look { get; init; }

    /// <summary>Doubts of the trade.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Around <see cref="Body"/>.</summary>
    public FilmBox Box => FilmBox.Around(Body);

    /// <summary>Around <see cref="Film"/>.</summary>
    public FilmBox FilmBox => FilmBox.Around(Film);

    /// <summary>Area that stays in the piece [mm²].</summary>
    public double AreaMm2 => Body.Sum(a => a.AreaMm2);

    /// <summary>Length of edge that wall or layer carries [mm].</summary>
    public double CarriedMm => Edges.Where(e => e.Carries).Sum(e => e.LengthMm);

    /// <summary>Length of all its edges [mm].</summary>
    public double AroundMm => Edges.Sum(e => e.LengthMm);

    /// <summary>True when there is a sheet to print.</summary>
    public bool Stands => Body.Count > 0;

    /// <summary>The body's rings in the mould, as lines to draw: x to the right, y away from the viewer, z upwards [mm].</summary>
    public IReadOnlyList<IReadOnlyList<Point3>> InMould => [.. Body.SelectMany(a => a.Rings).Select(r => (IReadOnlyList<Point3>)[.. r.Select(Plane.At)])];
}
