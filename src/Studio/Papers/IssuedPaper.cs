using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Studio.Papers;

/// <summary>A paper that left the studio, as it left: its bytes lie in the paper folder under their hash. Never changed afterwards.</summary>
public sealed class IssuedPaper
{
    public int Id { get; set; }

    /// <summary>A key of <see cref="PaperKinds"/>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>The paper's own number, such as <c>26-004, version 2</c>.</summary>
    public string Number { get; set; } = "";

    public int CommissionId { get; set; }

    /// <summary>The quote it prints; null where it prints no single record.</summary>
    public int? RefId { get; set; }

    public string FileName { get; set; } = "";

    /// <summary>SHA-256 of the bytes.</summary>
    public string Hash { get; set; } = "";

    public long Bytes { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    /// <summary>The form that made it leave, so that a second send keeps no second paper; empty where the record itself says so.</summary>
    public string SubmitKey { get; set; } = "";

    /// <summary>The state that was printed when it left: <c>sent</c>, <c>given</c>.</summary>
    public string State { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<IssuedPaper>
    {
        public void Configure(EntityTypeBuilder<IssuedPaper> builder)
        {
            builder.HasIndex(p => p.CommissionId); // a commission's page lists its papers
            builder.HasIndex(p => new { p.Kind, p.RefId });
        }
    }
}

/// <summary>Papers that leave the studio.</summary>
public static class PaperKinds
{
    public const string Quote = "quote";
    public const string Receipt = "receipt";
    public const string Return = "return-note";

    /// <summary>What a paper is called.</summary>
    /// <exception cref="InvalidOperationException">No such kind.</exception>
    public static string Label(string kind) => kind switch
    {
        Quote => "Quote",
        Receipt => "Receipt for keepsakes",
        Return => "Going home",
        var unknown => throw new InvalidOperationException($"There is no kind of paper '{unknown}'."),
    };
}
