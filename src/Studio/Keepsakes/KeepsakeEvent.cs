using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>
/// One entry in a keepsake's log; only ever appended. It holds references and amounts; sentences are written from it and never read back.
/// </summary>
public sealed class KeepsakeEvent
{
    /// <summary>How entries are written now; those of versions before 0.4 were sentences and carried 0.</summary>
    public const int Now = 1;

    public int Id { get; set; }

    public int KeepsakeId { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    /// <summary>A key of <see cref="CustodyKind"/>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>Where it, or what is left of it, lies from then on; empty where that did not change.</summary>
    public string Place { get; set; } = "";

    /// <summary>Whole things [pieces]; null where the entry is not about an amount.</summary>
    public int? Count { get; set; }

    /// <summary>[g]; null where it was not weighed.</summary>
    public double? MassG { get; set; }

    /// <summary>The piece it went into.</summary>
    public int? PieceId { get; set; }

    /// <summary>The layer of that piece.</summary>
    public int? LayerId { get; set; }

    /// <summary>The pour that holds it.</summary>
    public int? PourId { get; set; }

    /// <summary>The earlier entry that this one takes out again or takes back.</summary>
    public int? RefId { get; set; }

    /// <summary>Who brought it, or who took it back.</summary>
    public string Whom { get; set; } = "";

    /// <summary>What the person typed: what was done, why, the test's name, how it came.</summary>
    public string Words { get; set; } = "";

    /// <summary>What a correction changed, field by field.</summary>
    public List<FieldChange> Changes { get; set; } = [];

    /// <summary>The sentence of a version before 0.4, as it was written then; shown, never read.</summary>
    public string OldWords { get; set; } = "";

    /// <summary><see cref="Now"/> for entries of today's form.</summary>
    public int Format { get; set; } = Now;

    /// <summary>The entry as the balance reads it.</summary>
    public CustodyEntry Entry => new(Id, Kind) { Count = Count, MassG = MassG, RefId = RefId, PieceId = PieceId, LayerId = LayerId, PourId = PourId, Place = Place };

    private sealed class Table : IEntityTypeConfiguration<KeepsakeEvent>
    {
        public void Configure(EntityTypeBuilder<KeepsakeEvent> builder)
        {
            builder.HasIndex(e => e.KeepsakeId);
            builder.HasIndex(e => e.PourId); // a pour that is taken back asks what it held
            builder.Property(e => e.Changes).AsJson();
            builder.Ignore(e => e.Entry);
            builder.HasOne<Keepsake>().WithMany().HasForeignKey(e => e.KeepsakeId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>One field of a correction.</summary>
/// <param name="Field">By the name that stands beside it.</param>
/// <param name="Was">Empty for nothing.</param>
/// <param name="Became">Empty for nothing.</param>
public sealed record FieldChange(string Field, string Was, string Became);
