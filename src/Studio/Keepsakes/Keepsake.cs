using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Commissions;
using Studio.Data;
using Studio.Data.Files;

namespace Studio.Keepsakes;

/// <summary>A thing a family lends or gives. Its past is <see cref="KeepsakeEvent"/>; the fields here are what follows from it now.</summary>
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

    public double? MassG { get; set; }

    /// <summary>Words of the trade, such as crack, foxing; empty means none seen.</summary>
    public List<string> ConditionWords { get; set; } = [];

    public string ConditionNote { get; set; } = "";

    /// <summary>What the family permits: a key of <see cref="Permission"/>.</summary>
    public string Permits { get; set; } = Permission.ReturnUntouched;

    /// <summary>Where it is now.</summary>
    public string Place { get; set; } = "";

    /// <summary><c>here</c>, <c>in-piece</c>, <c>returned</c>; follows from the newest event.</summary>
    public string Custody { get; set; } = "here";

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

    private sealed class Table : IEntityTypeConfiguration<Keepsake>
    {
        public void Configure(EntityTypeBuilder<Keepsake> builder)
        {
            builder.HasIndex(k => k.EntryNumber).IsUnique();
            builder.HasIndex(k => k.SubmitKey).IsUnique();
            builder.HasIndex(k => k.CommissionId);
            builder.Property(k => k.ConditionWords).AsJson();
            builder.HasOne(k => k.Commission).WithMany().HasForeignKey(k => k.CommissionId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>One link in a keepsake's chain of custody; append-only.</summary>
public sealed class KeepsakeEvent
{
    public int Id { get; set; }

    public int KeepsakeId { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    /// <summary>Open key: <c>received</c>, <c>moved</c>, <c>weighed</c>, <c>prepared</c>, <c>copied</c>, <c>embedded</c>, <c>returned</c>, <c>corrected</c>, <c>note</c>.</summary>
    public string Kind { get; set; } = "";

    public string Place { get; set; } = "";

    public double? MassG { get; set; }

    public string Words { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<KeepsakeEvent>
    {
        public void Configure(EntityTypeBuilder<KeepsakeEvent> builder)
        {
            builder.HasIndex(e => e.KeepsakeId);
            builder.HasOne<Keepsake>().WithMany().HasForeignKey(e => e.KeepsakeId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>A photograph in the file store; the file is found by its hash.</summary>
public sealed class Photo
{
    public int Id { get; set; }

    public string Hash { get; set; } = "";

    public int? KeepsakeId { get; set; }

    public int? CommissionId { get; set; }

    public string FileName { get; set; } = "";

    public int WidthPx { get; set; }

    public int HeightPx { get; set; }

    public long Bytes { get; set; }

    public DateTime AddedAt { get; set; }

    public string AddedBy { get; set; } = "";

    /// <summary>Local time on the camera, where it wrote one.</summary>
    public string TakenAt { get; set; } = "";

    /// <summary>The row of a photograph that the store has taken in; of nobody yet.</summary>
    public static Photo Of(StoredPhoto photo, DateTime now, string by) => new()
    {
        Hash = photo.Hash,
        FileName = photo.FileName,
        WidthPx = photo.WidthPx,
        HeightPx = photo.HeightPx,
        Bytes = photo.Bytes,
        AddedAt = now,
        AddedBy = by,
        TakenAt = photo.TakenAt?.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) ?? "",
    };

    private sealed class Table : IEntityTypeConfiguration<Photo>
    {
        public void Configure(EntityTypeBuilder<Photo> builder)
        {
            builder.HasIndex(p => p.KeepsakeId);
            builder.HasIndex(p => p.CommissionId);
            builder.HasIndex(p => p.Hash);
            builder.HasOne<Keepsake>().WithMany().HasForeignKey(p => p.KeepsakeId).OnDelete(DeleteBehavior.Restrict);
            builder.HasOne<Commission>().WithMany().HasForeignKey(p => p.CommissionId).OnDelete(DeleteBehavior.Restrict);
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

/// <summary>What the family permits us to do with a keepsake.</summary>
public static class Permission
{
    public const string EmbedAll = "embed-all";
    public const string EmbedPart = "embed-part";
    public const string CopyReturn = "copy-return";
    public const string ReturnUntouched = "return-untouched";

    public static IReadOnlyList<(string Key, string Label)> All { get; } =
    [
        (EmbedAll, "Cast all of it"),
        (EmbedPart, "Cast a part, return the rest"),
        (CopyReturn, "Copy it, return the original"),
        (ReturnUntouched, "Return untouched"),
    ];

    public static string Label(string key) => All.FirstOrDefault(p => p.Key == key).Label ?? key;
}
