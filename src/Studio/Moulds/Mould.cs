using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>A mould the maker owns.</summary>
public sealed class Mould : IVersioned
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary>Shape key of the engine.</summary>
    public string Shape { get; set; } = "pyramid";

    /// <summary>Dimension name with unit to number, as the engine names them.</summary>
    public Dictionary<string, double> Dimensions { get; set; } = [];

    /// <summary>For a mould measured with water: the fill, from the bottom up.</summary>
    public List<FillReading> Readings { get; set; } = [];

    /// <summary>For a mould from a mesh: which file, and how it is read.</summary>
    public MouldMesh? Mesh { get; set; }

    /// <summary>Water checks: how much went in up to a mark, against what was computed then.</summary>
    public List<WaterCheck> Checks { get; set; } = [];

    /// <summary>What the maker took over from the checks [ratio of measured to computed volume]; 1 where nothing was.</summary>
    public double VolumeFactor { get; set; } = 1;

    /// <summary>Spread of the checks that the factor was taken from [%]; null where nothing was.</summary>
    public double? VolumeSpreadPercent { get; set; }

    /// <summary>How many of them there are.</summary>
    public int Owned { get; set; } = 1;

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    public int Version { get; set; }

    public MouldSpec Spec => new(Shape, Dimensions)
    {
        Readings = MouldShapes.Find(Shape) is { Needs: MouldNeeds.Readings } ? Readings : null,
        Mesh = Mesh is { } m ? new MeshSource(m.Name, m.Unit, m.Up) : null,
        VolumeFactor = VolumeFactor,
        VolumeSpreadPercent = VolumeSpreadPercent,
    };

    private sealed class Table : IEntityTypeConfiguration<Mould>
    {
        public void Configure(EntityTypeBuilder<Mould> builder)
        {
            builder.Ignore(m => m.Spec);
            builder.Property(m => m.Dimensions).AsJson();
            builder.Property(m => m.Readings).AsJson();
            builder.Property(m => m.Mesh).AsJson();
            builder.Property(m => m.Checks).AsJson();
            builder.Property(m => m.VolumeFactor).HasDefaultValue(1.0);
        }
    }
}

/// <summary>A mesh kept beside the database.</summary>
/// <param name="Stored">Its name in the mesh folder, by its content.</param>
/// <param name="Name">The name it came with.</param>
/// <param name="Unit">As <see cref="MeshSource.Units"/>.</param>
/// <param name="Up">As <see cref="MeshSource.Directions"/>.</param>
public sealed record MouldMesh(string Stored, string Name, string Unit, string Up);

/// <summary>One water check.</summary>
/// <param name="HeightMm">Mark up to which it was filled [mm].</param>
/// <param name="VolumeMl">Water poured in [ml]; a gram is a millilitre.</param>
/// <param name="At">When, in UTC.</param>
/// <param name="By">Who poured.</param>
public sealed record WaterCheck(double HeightMm, double VolumeMl, DateTime At, string By);
