using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Stores;

/// <summary>Anything bought that is not resin: pigment, glitter, stones, film, lights, packaging.</summary>
public sealed class Material : IVersioned
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary>Open key: <c>pigment</c>, <c>glitter</c>, <c>stone</c>, <c>metal</c>, <c>film</c>, <c>light</c>, <c>battery</c>, <c>hardware</c>, <c>packaging</c>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>What it is counted in: <c>g</c>, <c>ml</c>, <c>piece</c>, <c>sheet</c>.</summary>
    public string Unit { get; set; } = "g";

    public double? DensityGPerMl { get; set; }

    public string DensitySource { get; set; } = "";

    public double? PackingFraction { get; set; }

    /// <summary>Highest temperature it should see [°C]; null for the usual one of its kind.</summary>
    public double? LimitC { get; set; }

    /// <summary>Whether it is or holds a button cell, which a paper has to warn of; null while nobody has said. Asked of lights and batteries.</summary>
    public bool? ButtonCell { get; set; }

    public double PackSize { get; set; } = 1;

    public decimal PackPrice { get; set; }

    public bool Retired { get; set; }

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Material>
    {
        public void Configure(EntityTypeBuilder<Material> builder) => builder.HasIndex(m => m.Name);
    }
}
