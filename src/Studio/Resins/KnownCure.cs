using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Fit;

namespace Studio.Resins;

/// <summary>What is known of how a resin, or one lot of it, cures: a fit to its sheet or to a thermometer's log, and whether the maker took it over. Never edited but for that.</summary>
public sealed class KnownCure : IVersioned
{
    public const string Proposed = "proposed";
    public const string Accepted = "accepted";
    public const string Declined = "declined";

    public int Id { get; set; }

    public int ResinId { get; set; }

    /// <summary>The lot it holds for; empty for the resin as its sheet describes it.</summary>
    public string Lot { get; set; } = "";

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    /// <summary>The thermometer log that it came from; null for the sheet.</summary>
    public int? CuringLogId { get; set; }

    /// <summary>The sheet's numbers that were fitted.</summary>
    public DataSheet? Sheet { get; set; }

    public FitState State { get; set; } = null!;

    public double Misfit { get; set; }

    /// <summary>Each number beside what the fit gives for it.</summary>
    public List<FitDatum> Data { get; set; } = [];

    public List<Finding> Findings { get; set; } = [];

    /// <summary><see cref="Proposed"/>, <see cref="Accepted"/> or <see cref="Declined"/>.</summary>
    public string Standing { get; set; } = Proposed;

    public DateTime? DecidedAt { get; set; }

    public string DecidedBy { get; set; } = "";

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<KnownCure>
    {
        public void Configure(EntityTypeBuilder<KnownCure> builder)
        {
            builder.HasIndex(k => new { k.ResinId, k.Lot }); // the bench asks for the newest accepted of a lot
            builder.Property(k => k.Sheet).AsJson();
            builder.Property(k => k.State).AsJson();
            builder.Property(k => k.Data).AsJson();
            builder.Property(k => k.Findings).AsJson();
            builder.HasOne<Resin>().WithMany().HasForeignKey(k => k.ResinId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}
