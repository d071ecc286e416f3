using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
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

    /// <summary>How many of them there are.</summary>
    public int Owned { get; set; } = 1;

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    public int Version { get; set; }

    public MouldSpec Spec => new(Shape, Dimensions);

    private sealed class Table : IEntityTypeConfiguration<Mould>
    {
        public void Configure(EntityTypeBuilder<Mould> builder)
        {
            builder.Ignore(m => m.Spec);
            builder.Property(m => m.Dimensions).AsJson();
        }
    }
}
