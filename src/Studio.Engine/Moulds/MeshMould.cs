using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Studio.Engine.Meshes;

namespace Studio.Engine.Moulds;

/// <summary>A mould whose cavity is a closed mesh. Volumes are exact for the mesh; a round mould is as round as its facets.</summary>
public sealed class MeshMould : MouldBody
{
    // a mould is made anew with every key that a person types; its section would be a pass over the whole mesh each time
    private static readonly ConditionalWeakTable<Cavity, MeshMould> Known = [];

    // each is a pass over the whole mesh, and asked for with every change of a layer
    private const int OutlineSteps = 200;

    private readonly ConcurrentDictionary<int, double?> outlines = [];
    private readonly Cavity cavity;
    private readonly Profile profile;

    private MeshMould(Cavity cavity)
        : base(Kind, cavity.HeightMm)
    {
        this.cavity = cavity;
        var section = Section.Upright(cavity.Mesh, 0);
        profile = new Profile(section, cavity.HeightMm);
        Outline = new Outline(profile.RightMm, PlanAt) { SectionMm = [.. section.Select(p => (IReadOnlyList<PlanPoint>)[.. p.Select(q => new PlanPoint(q.X, q.Z))])] };
    }

    /// <summary>Key and words of this shape; it has a file in place of dimensions.</summary>
    public static MouldShape Kind { get; } = new("mesh", "From a mesh file", [], _ => throw new NotSupportedException("A mesh mould is made from a file."))
    {
        Needs = MouldNeeds.Mesh,
        FromSpec = Make,
        Grid = MouldGrid.Areas,
    };

    /// <summary>Notes on what was mended in the mesh or is worth knowing.</summary>
    public IReadOnlyList<Finding> Findings => cavity.Findings;

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    public override double AreaMm2(double zMm) => cavity.Table.AreaMm2(Height(zMm));

    /// <inheritdoc/>
    public override double VolumeMl(double zMm) => cavity.Table.VolumeMm3(Height(zMm)) / 1000;

    /// <inheritdoc/>
    public override double MomentMlMm(double zMm) => cavity.Table.MomentMm4(Height(zMm)) / 1000;

    /// <summary>Along the right-hand wall of the upright section through the middle.</summary>
    public override double FaceMarkMm(double zMm) => profile.MarkMm(Height(zMm));

    /// <inheritdoc/>
    public override double ClearanceMm(double widthMm, double depthMm, double zMm) => ClearanceMm(widthMm, depthMm, zMm, zMm);

    /// <summary>As true for every height in between; walls are nearest wherever they are, floors within 10° of level do not count.</summary>
    public override double ClearanceMm(double widthMm, double depthMm, double fromMm, double toMm) =>
        BoxGap.Mm(cavity.Mesh, Require.Positive(widthMm, "mm") / 2, Require.Positive(depthMm, "mm") / 2, Height(Math.Min(fromMm, toMm)), Height(Math.Max(fromMm, toMm)));

    /// <summary>Hollows and basins that stand apart count with all their walls.</summary>
    public override double? OutlineShare(double zMm) => outlines.GetOrAdd((int)Math.Round(Height(zMm) / HeightMm * OutlineSteps), Share);

    /// <inheritdoc/>
    public override double HeightAtMl(double volumeMl) => volumeMl >= CapacityMl ? HeightMm : cavity.Table.HeightMm(volumeMl * 1000);

    /// <inheritdoc/>
    public override TriangleMesh Surface() => cavity.Mesh;

    private static MeshMould? Make(MouldSpec spec, string path, InputErrors errors)
    {
        if (spec.Cavity is { } cavity)
        {
            return Known.GetValue(cavity, c => new MeshMould(c));
        }

        errors.Add(path + ".file", spec.Mesh is { } source ? $"The mesh '{source.File}' is not there. Choose its file again." : "A mesh mould needs its file. Choose an STL or OBJ file.");
        return null;
    }

    // the largest polygon: holes and lesser basins beside it are left to the volume table
    private IReadOnlyList<PlanPoint> PlanAt(double zMm) =>
        [.. (Section.AtHeight(cavity.Mesh, Height(zMm)).MaxBy(p => Section.DoubleAreaMm2(p)) ?? []).Select(p => new PlanPoint(p.X, p.Y))];

    private double? Share(int step)
    {
        var section = Section.AtHeight(cavity.Mesh, HeightMm * step / OutlineSteps);
        var area = section.Sum(p => Section.DoubleAreaMm2(p)) / 2;
        return area > 0 ? section.Sum(p => p.Select((q, k) => (p[(k + 1) % p.Count] - q).Length).Sum()) / (2 * Math.Sqrt(Math.PI * area)) : null;
    }
}
