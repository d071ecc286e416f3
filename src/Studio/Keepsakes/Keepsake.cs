using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>A thing a family lends or gives. Its past is <see cref="KeepsakeEvent"/>; what the fields say of place and amounts follows from it.</summary>
public sealed class Keepsake : IVersioned
{
    public int Id { get; set; }

    /// <summary>KS-YY-NNNNN-C with an ISO 7064 MOD 37,36 check character.</summary>
    public string EntryNumber { get; set; } = "";

    public int CommissionId { get; set; }

    public Commission? Commission { get; set; }

    /// <summary>Key of the engine's material rules, such as <c>photograph-dye</c>, <c>dried-flowers</c>.</summary>
    public string Kind { get; set; } = "";

    public string Description { get; set; } = "";

    public int Count { get; set; } = 1;

    /// <summary>What came in [g], as corrected; null where it was never weighed; follows from the log.</summary>
    public double? MassG { get; set; }

    /// <summary>Words of the trade, such as crack, foxing; empty means none seen.</summary>
    public List<string> ConditionWords { get; set; } = [];

    public string ConditionNote { get; set; } = "";

    /// <summary>What the family permits: a key of <see cref="Permissions"/>; empty is not known, and refuses everything.</summary>
    public string Permits { get; set; } = "";

    /// <summary>Where a part is permitted: at most so many pieces; null where the family named no number.</summary>
    public int? PartCount { get; set; }

    /// <summary>Where a part is permitted: at most so much [g]; null where the family named no weight.</summary>
    public double? PartG { get; set; }

    /// <summary>The owner who let the only photograph be cast all the same; empty where nobody did.</summary>
    public string OverruledBy { get; set; } = "";

    /// <summary>Why; it prints on the receipt.</summary>
    public string OverruledWhy { get; set; } = "";

    /// <summary>Where what is held lies; follows from the log.</summary>
    public string Place { get; set; } = "";

    /// <summary>A key of <see cref="CustodyWhereabouts"/>; follows from the log.</summary>
    public string Custody { get; set; } = CustodyWhereabouts.Here;

    /// <summary>How many are here [pieces]; follows from the log.</summary>
    public int HeldCount { get; set; }

    /// <summary>What is here [g]; null where nobody knows; follows from the log.</summary>
    public double? HeldG { get; set; }

    /// <summary>How it came: <c>by hand</c>, <c>by post</c>.</summary>
    public string Method { get; set; } = "by hand";

    public string Requirements { get; set; } = "";

    public string DepositorName { get; set; } = "";

    public string DepositorAuthority { get; set; } = "";

    public string Packing { get; set; } = "";

    public DateOnly? ReturnBy { get; set; }

    public DateTime ReceivedAt { get; set; }

    /// <summary>Made by the form before its first send, so that a second send of the same form adds nothing.</summary>
    public string SubmitKey { get; set; } = "";

    public int Version { get; set; }

    /// <summary>What the family permits, as its record says it.</summary>
    public PermissionRule Permission => Permissions.For(Permits);

    /// <summary>What its rules look at.</summary>
    public CustodySubject Subject => new(Kind, Permits) { PartCount = PartCount, PartG = PartG, Overruled = OverruledWhy.Length > 0 };

    private sealed class Table : IEntityTypeConfiguration<Keepsake>
    {
        public void Configure(EntityTypeBuilder<Keepsake> builder)
        {
            builder.HasIndex(k => k.EntryNumber).IsUnique();
            builder.HasIndex(k => k.SubmitKey).IsUnique();
            builder.HasIndex(k => k.CommissionId);
            builder.Property(k => k.ConditionWords).AsJson();
            builder.Ignore(k => k.Subject);
            builder.Ignore(k => k.Permission);
            builder.HasOne(k => k.Commission).WithMany().HasForeignKey(k => k.CommissionId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>The last running entry number of a year; its row is the lock that keeps numbers from being given twice.</summary>
public sealed class EntryCounter
{
    /// <summary>The year, such as 2026.</summary>
    public int Id { get; set; }

    public int Last { get; set; }

    private sealed class Table : IEntityTypeConfiguration<EntryCounter>
    {
        public void Configure(EntityTypeBuilder<EntryCounter> builder) => builder.Property(c => c.Id).ValueGeneratedNever();
    }
}
