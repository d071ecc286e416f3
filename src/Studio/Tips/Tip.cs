using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Tips;

/// <summary>A tip of the trade, shown beside the choice it concerns.</summary>
public sealed class Tip : IVersioned
{
    public int Id { get; set; }

    /// <summary>The choice it concerns: a key of <see cref="TipPlaces"/>.</summary>
    public string Place { get; set; } = "";

    public string Text { get; set; } = "";

    /// <summary>Where it is from, such as 'Common practice, no source'.</summary>
    public string Source { get; set; } = "";

    /// <summary>Key of a tip that came with the program; empty for the maker's own.</summary>
    public string Seed { get; set; } = "";

    public bool Retired { get; set; }

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Tip>
    {
        public void Configure(EntityTypeBuilder<Tip> builder) => builder.HasIndex(t => t.Place);
    }
}
