using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Commissions;

namespace Studio.Money;

/// <summary>Money received for a commission.</summary>
public sealed class Payment
{
    public int Id { get; set; }

    public int CommissionId { get; set; }

    public int? QuoteId { get; set; }

    /// <summary><c>deposit</c> or <c>balance</c>.</summary>
    public string Kind { get; set; } = "deposit";

    public decimal Amount { get; set; }

    public string Currency { get; set; } = "GBP";

    public DateTime PaidAt { get; set; }

    public string How { get; set; } = "";

    public string By { get; set; } = "";

    public bool Withdrawn { get; set; }

    public string SubmitKey { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<Payment>
    {
        public void Configure(EntityTypeBuilder<Payment> builder)
        {
            builder.HasIndex(p => p.CommissionId);
            builder.HasIndex(p => p.SubmitKey).IsUnique();
            builder.HasOne<Commission>().WithMany().HasForeignKey(p => p.CommissionId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}
