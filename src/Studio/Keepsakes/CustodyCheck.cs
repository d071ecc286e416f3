using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Keepsakes;

/// <summary>One time that every keepsake's balance was recomputed from its log.</summary>
public sealed class CustodyCheck
{
    public int Id { get; set; }

    public DateTime At { get; set; }

    /// <summary>How many keepsakes were looked at.</summary>
    public int Looked { get; set; }

    /// <summary>What does not add up, a whole sentence each; empty when everything does.</summary>
    public List<string> Faults { get; set; } = [];

    private sealed class Table : IEntityTypeConfiguration<CustodyCheck>
    {
        public void Configure(EntityTypeBuilder<CustodyCheck> builder) => builder.Property(c => c.Faults).AsJson();
    }
}
