using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Bench;

/// <summary>A layer that was poured: what was computed, what was weighed, and when. Its numbers are kept as they were.</summary>
public sealed class Pour : IVersioned
{
    public int Id { get; set; }

    public int PieceId { get; set; }

    public int LayerId { get; set; }

    public int LayerOrder { get; set; }

    public string LayerName { get; set; } = "";

    public int ResinId { get; set; }

    public string ResinName { get; set; } = "";

    public string ResinLot { get; set; } = "";

    public string Colour { get; set; } = "";

    public double FromMm { get; set; }

    public double ToMm { get; set; }

    public double PlannedAG { get; set; }

    public double PlannedBG { get; set; }

    public double ActualAG { get; set; }

    public double ActualBG { get; set; }

    public int Batches { get; set; } = 1;

    /// <summary>The scale's readings as they were typed.</summary>
    public List<ScaleReading> Tally { get; set; } = [];

    /// <summary>Room temperature noted at the start [°C].</summary>
    public double? RoomC { get; set; }

    public DateTime StartedAt { get; set; }

    public string By { get; set; } = "";

    /// <summary>The data sheet's times as they stood at the pour: a later edit of the resin never moves an old clock.</summary>
    public CureSheet Sheet { get; set; } = new() { Times = [] };

    /// <summary>Taken back by a correction; kept, and no longer counted.</summary>
    public bool Withdrawn { get; set; }

    public string SubmitKey { get; set; } = "";

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Pour>
    {
        public void Configure(EntityTypeBuilder<Pour> builder)
        {
            builder.HasIndex(p => p.PieceId); // the shelf reads every pour of the pieces in the making
            builder.HasIndex(p => p.SubmitKey).IsUnique();
            builder.Property(p => p.Tally).AsJson();
            builder.Property(p => p.Sheet).AsJson();
            builder.HasOne<Piece>().WithMany().HasForeignKey(p => p.PieceId).OnDelete(DeleteBehavior.Restrict);
            builder.HasOne<Resin>().WithMany().HasForeignKey(p => p.ResinId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>One reading of the scale while weighing.</summary>
/// <param name="Batch">From 1.</param>
/// <param name="Part"><c>A</c> or <c>B</c>.</param>
/// <param name="Grams">What was added [g].</param>
public sealed record ScaleReading(int Batch, string Part, double Grams);

/// <summary>A pour's entry set right: what it said, what it says, and why.</summary>
public sealed class PourCorrection
{
    public int Id { get; set; }

    public int PourId { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    public string Field { get; set; } = "";

    public string Was { get; set; } = "";

    public string Now { get; set; } = "";

    public string Why { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<PourCorrection>
    {
        public void Configure(EntityTypeBuilder<PourCorrection> builder)
        {
            builder.HasIndex(c => c.PourId);
            builder.HasOne<Pour>().WithMany().HasForeignKey(c => c.PourId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>The room's temperature as somebody read it.</summary>
public sealed class Reading
{
    public int Id { get; set; }

    public DateTime At { get; set; }

    /// <summary>Where in the studio.</summary>
    public string Place { get; set; } = "";

    public double Celsius { get; set; }

    public double? HumidityPercent { get; set; }

    public string By { get; set; } = "";

    /// <summary>Taken back as a slip; kept, and no longer counted.</summary>
    public bool Withdrawn { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Reading>
    {
        public void Configure(EntityTypeBuilder<Reading> builder) => builder.HasIndex(r => r.At); // the clock reads from the first pour on
    }
}
