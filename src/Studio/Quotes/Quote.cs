using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Price;
using Studio.Pieces;

namespace Studio.Quotes;

/// <summary>One version of a price. Once sent, its numbers stay as they are.</summary>
public sealed class Quote : IVersioned
{
    public int Id { get; set; }

    public int CommissionId { get; set; }

    public int PieceId { get; set; }

    /// <summary>From 1 within the commission.</summary>
    public int VersionNo { get; set; } = 1;

    /// <summary><c>draft</c>, <c>sent</c>, <c>accepted</c>, <c>superseded</c>, <c>declined</c>.</summary>
    public string State { get; set; } = "draft";

    public string Currency { get; set; } = "GBP";

    /// <summary>The sheet it was worked out on, with every figure that was typed.</summary>
    public QuoteForm Form { get; set; } = new();

    /// <summary>What was fed to the price calculation.</summary>
    public PriceInput Input { get; set; } = new() { Currency = "GBP" };

    /// <summary>What came out of it.</summary>
    public PriceResult? Result { get; set; }

    /// <summary>What the family reads under 'what you will get'.</summary>
    public string FamilyWords { get; set; } = "";

    public DateOnly ValidUntil { get; set; }

    /// <summary>The day that the maker promises with it; kept in the sheet.</summary>
    public DateOnly? PromiseOn => Form.PromiseOn;

    public DateTime CreatedAt { get; set; }

    public DateTime? SentAt { get; set; }

    public DateTime? AcceptedAt { get; set; }

    public string AcceptedBy { get; set; } = "";

    public string AcceptedHow { get; set; } = "";

    public int Version { get; set; }

    public List<QuoteLine> Lines { get; set; } = [];

    private sealed class Table : IEntityTypeConfiguration<Quote>
    {
        public void Configure(EntityTypeBuilder<Quote> builder)
        {
            builder.HasIndex(q => q.CommissionId);
            builder.Property(q => q.Form).AsJson();
            builder.Property(q => q.Input).AsJson();
            builder.Property(q => q.Result).AsJson();
            builder.HasOne<Commission>().WithMany().HasForeignKey(q => q.CommissionId).OnDelete(DeleteBehavior.Restrict);
            builder.HasOne<Piece>().WithMany().HasForeignKey(q => q.PieceId).OnDelete(DeleteBehavior.Restrict);
            builder.HasMany(q => q.Lines).WithOne().HasForeignKey(l => l.QuoteId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>One line of a quote with its stored number and how it came about.</summary>
public sealed class QuoteLine
{
    public int Id { get; set; }

    public int QuoteId { get; set; }

    public int Order { get; set; }

    /// <summary>Open key of the cost line, such as <c>material</c>, <c>labour</c>.</summary>
    public string Kind { get; set; } = "";

    public string Name { get; set; } = "";

    /// <summary>In words with numbers and units: "412 g of 3 000 g at £54.00".</summary>
    public string HowComputed { get; set; } = "";

    public decimal Cost { get; set; }

    private sealed class Table : IEntityTypeConfiguration<QuoteLine>
    {
        public void Configure(EntityTypeBuilder<QuoteLine> builder) => builder.HasIndex(l => l.QuoteId);
    }
}
