using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Data.Files;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>A mould the maker owns.</summary>
public sealed class Mould : IVersioned, IHoldsMesh
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary>Shape key of the engine.</summary>
    public string Shape { get; set; } = MouldShapes.Usual;

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

    /// <summary>Its wall, for the heat; null where nobody said, and then a usual silicone wall is assumed and said to be.</summary>
    public MouldWall? Wall { get; set; }

    /// <summary>How many of them there are.</summary>
    public int Owned { get; set; } = 1;

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    public int Version { get; set; }

    /// <summary>Where its mesh lies; given to it by the database.</summary>
    [JsonIgnore]
    public MeshFolder? Meshes { get; set; }

    /// <summary>As the engine takes it; a mesh is read when this is asked for the first time.</summary>
    [JsonIgnore]
    public MouldSpec Spec
    {
        get
        {
            var needs = MouldShapes.Find(Shape)?.Needs;
            var mesh = needs is MouldNeeds.Mesh ? Mesh : null;
            return new(Shape, Dimensions)
            {
                Readings = needs is MouldNeeds.Readings ? Readings : null,
                Mesh = mesh?.Source,
                Cavity = mesh is not null && Meshes?.Cavity(mesh.Stored, mesh.Source) is { Ok: true } read ? read.Value : null,
                VolumeFactor = VolumeFactor,
                VolumeSpreadPercent = VolumeSpreadPercent,
            };
        }
    }

    private sealed class Table : IEntityTypeConfiguration<Mould>
    {
        public void Configure(EntityTypeBuilder<Mould> builder)
        {
            builder.Ignore(m => m.Spec);
            builder.Ignore(m => m.Meshes);
            builder.Property(m => m.Dimensions).AsJson();
            builder.Property(m => m.Readings).AsJson();
            builder.Property(m => m.Mesh).AsJson();
            builder.Property(m => m.Checks).AsJson();
            builder.Property(m => m.Wall).AsJson();
            builder.Property(m => m.VolumeFactor).HasDefaultValue(1.0);
        }
    }
}

/// <summary>A mesh kept beside the database.</summary>
/// <param name="Stored">Its name in the mesh folder, by its content.</param>
/// <param name="Name">The name it came with.</param>
/// <param name="Unit">As <see cref="MeshSource.Units"/>.</param>
/// <param name="Up">As <see cref="MeshSource.Directions"/>.</param>
public sealed record MouldMesh(string Stored, string Name, string Unit, string Up)
{
    /// <summary>As the engine reads it.</summary>
    [JsonIgnore]
    public MeshSource Source => new(Name, Unit, Up);
}

/// <summary>One water check.</summary>
/// <param name="HeightMm">Mark up to which it was filled [mm].</param>
/// <param name="VolumeMl">Water poured in [ml]; a gram is a millilitre.</param>
/// <param name="At">When, in UTC.</param>
/// <param name="By">Who poured.</param>
public sealed record WaterCheck(double HeightMm, double VolumeMl, DateTime At, string By);

/// <summary>What a mould's wall is made of and how thick it is.</summary>
/// <param name="Material">Open key: <c>silicone</c>, <c>polypropylene</c>, <c>polyethylene</c>, <c>acrylic</c>, <c>wood</c> …</param>
/// <param name="ThicknessMm">Measured level [mm].</param>
/// <param name="FloorMm">Under the lowest point [mm].</param>
/// <param name="LimitC">Highest temperature it should see [°C]; null for the material's usual one.</param>
public sealed record MouldWall(string Material, double ThicknessMm, double FloorMm, double? LimitC = null);
