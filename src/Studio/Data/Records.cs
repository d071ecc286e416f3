using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Studio.Data;

/// <summary>A record that two people could edit: saving it over somebody else's newer version is refused, not lost.</summary>
public interface IVersioned
{
    /// <summary>Raised at every save.</summary>
    int Version { get; set; }
}

/// <summary>A person who signs in.</summary>
public sealed class StudioUser : IdentityUser
{
    [PersonalData]
    public string DisplayName { get; set; } = "";

    public DateTime CreatedAt { get; set; }

    /// <summary>Retired people keep their name in the history and cannot sign in.</summary>
    public bool Retired { get; set; }
}

/// <summary>One change of one record: who, when, what it was and what it became.</summary>
public sealed class AuditEntry
{
    public int Id { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    public string Entity { get; set; } = "";

    public string EntityId { get; set; } = "";

    public string Act { get; set; } = "";

    /// <summary>JSON: field to [before, after].</summary>
    public string Changes { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<AuditEntry>
    {
        public void Configure(EntityTypeBuilder<AuditEntry> builder) =>
            builder.HasIndex(a => new { a.Entity, a.EntityId }); // the history under a record
    }
}
