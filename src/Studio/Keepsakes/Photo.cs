using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Commissions;
using Studio.Data.Files;

namespace Studio.Keepsakes;

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
