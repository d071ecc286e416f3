using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Customers;

/// <summary>Who asks for a piece.</summary>
public sealed class Customer : IVersioned
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    public string Email { get; set; } = "";

    public string Phone { get; set; } = "";

    public string Address { get; set; } = "";

    public string Notes { get; set; } = "";

    public DateTime CreatedAt { get; set; }

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Customer>
    {
        public void Configure(EntityTypeBuilder<Customer> builder)
        {
            builder.Property(c => c.Name).HasMaxLength(200);
            builder.HasIndex(c => c.Name); // search while typing
        }
    }
}
