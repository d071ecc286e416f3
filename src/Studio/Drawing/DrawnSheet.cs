using Studio.Engine.Meshes;

namespace Studio.Drawing;

/// <summary>A photograph on film, or another flat thing, as it stands in the piece.</summary>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Outline">Its corners in one plane, in order, as the piece stands for casting [mm]: x to the right, y away, z upwards.</param>
public sealed record DrawnSheet(string Name, IReadOnlyList<Point3> Outline);

/// <summary>A sheet as the section sees it.</summary>
/// <param name="Points">In section coordinates.</param>
/// <param name="Filled">True where its face is seen, false where it is seen on edge, as a line.</param>
public sealed record SectionSheet(string Name, IReadOnlyList<SectionPoint> Points, bool Filled)
{
    /// <summary>A sheet whose picture is thinner than this is seen on edge [mm].</summary>
    private const double EdgeMm = 0.5;

    /// <summary>Looks at a sheet from the front.</summary>
    public static SectionSheet Of(DrawnSheet sheet)
    {
        var flat = FlatLine.Of([.. sheet.Outline.Select(p => (p.X, p.Z))], EdgeMm);
        return new SectionSheet(sheet.Name, [.. flat.Points.Select(p => new SectionPoint(p.X, p.Y))], flat.Filled);
    }
}
