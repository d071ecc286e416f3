using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Stores;

/// <summary>A pressure pot that castings cure in.</summary>
public sealed class Pot : IVersioned
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    /// <summary>Highest gauge pressure on its plate [bar]; null where it has none, and then nothing is planned in it.</summary>
    public double? RatedBar { get; set; }

    /// <summary>Gauge pressure the maker works at [bar].</summary>
    public double? WorkingBar { get; set; }

    /// <summary>When it was last tested by somebody competent.</summary>
    public DateOnly? TestedOn { get; set; }

    /// <summary>When it must be tested again.</summary>
    public DateOnly? TestDueOn { get; set; }

    /// <summary>Room inside [mm].</summary>
    public double? InnerDiameterMm { get; set; }

    /// <summary>Room inside [mm].</summary>
    public double? InnerHeightMm { get; set; }

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Pot>
    {
        public void Configure(EntityTypeBuilder<Pot> builder) => builder.HasIndex(p => p.Name);
    }
}
