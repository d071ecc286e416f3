using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Customers;
using Studio.Data;

namespace Studio.Commissions;

/// <summary>What a customer asks for, and whom it remembers.</summary>
public sealed class Commission : IVersioned
{
    public int Id { get; set; }

    /// <summary>Such as <c>26-014</c>: two-digit year, running number.</summary>
    public string Number { get; set; } = "";

    public int CustomerId { get; set; }

    public Customer? Customer { get; set; }

    /// <summary>What is asked for, in a few words.</summary>
    public string Title { get; set; } = "";

    /// <summary>Whom or what it remembers.</summary>
    public string Remembers { get; set; } = "";

    public string Occasion { get; set; } = "";

    public DateOnly? NeededBy { get; set; }

    /// <summary><c>collection</c> or <c>delivery</c>.</summary>
    public string Handover { get; set; } = "collection";

    public string DeliveryAddress { get; set; } = "";

    public string Notes { get; set; } = "";

    /// <summary>Where it stands: a key of <see cref="Standing.All"/>.</summary>
    public string Stands { get; set; } = Standing.Asked;

    /// <summary>Why it was let go or crossed out; empty while it goes on.</summary>
    public string EndedWhy { get; set; } = "";

    /// <summary>What had been spent on it when it was let go, in the studio's money; null where nobody said.</summary>
    public decimal? EndedSpent { get; set; }

    public DateTime CreatedAt { get; set; }

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<Commission>
    {
        public void Configure(EntityTypeBuilder<Commission> builder)
        {
            builder.HasIndex(c => c.Number).IsUnique();
            builder.HasIndex(c => c.Stands); // the list's filter
            builder.HasOne(c => c.Customer).WithMany().HasForeignKey(c => c.CustomerId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>One thing that happened to a commission; never changed afterwards.</summary>
public sealed class CommissionEvent
{
    public int Id { get; set; }

    public int CommissionId { get; set; }

    public DateTime At { get; set; }

    public string By { get; set; } = "";

    /// <summary>Open key: <c>stands</c>, <c>quote</c>, <c>payment</c>, <c>keepsake</c>, <c>piece</c>, <c>note</c>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>A whole sentence.</summary>
    public string Words { get; set; } = "";

    /// <summary>The record it tells of, such as <c>pour/12</c>; empty for none. What is told once is found by this, never by its words.</summary>
    public string About { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<CommissionEvent>
    {
        public void Configure(EntityTypeBuilder<CommissionEvent> builder)
        {
            builder.HasIndex(e => e.CommissionId); // the commission's story
            builder.HasOne<Commission>().WithMany().HasForeignKey(e => e.CommissionId).OnDelete(DeleteBehavior.Restrict);
        }
    }
}

/// <summary>Where a commission stands, in the order of the work.</summary>
public static class Standing
{
    public const string Asked = "asked";
    public const string Quoted = "quoted";
    public const string Agreed = "agreed";
    public const string Making = "making";
    public const string Ready = "ready";
    public const string Home = "home";
    public const string LetGo = "let-go";
    public const string CrossedOut = "crossed-out";

    /// <summary>Key, label, and what it means in a sentence.</summary>
    public static IReadOnlyList<(string Key, string Label, string Means)> All { get; } =
    [
        (Asked, "Asked", "Someone has asked."),
        (Quoted, "Quoted", "We wait for their answer to a price."),
        (Agreed, "Agreed", "It is to be made."),
        (Making, "In the making", "It is being cast or finished."),
        (Ready, "Ready", "Waiting to go home."),
        (Home, "Home", "Handed over to the family."),
        (LetGo, "Let go", "They decided not to go ahead."),
        (CrossedOut, "Crossed out", "Logged by mistake: kept, and counted nowhere."),
    ];

    /// <summary>Where nothing is made any more.</summary>
    public static IReadOnlyList<string> Ended { get; } = [Home, LetGo, CrossedOut];

    /// <summary>True where nothing is made any more.</summary>
    public static bool Ends(string standing) => Ended.Contains(standing, StringComparer.Ordinal);

    public static string Label(string key) => All.FirstOrDefault(s => s.Key == key).Label ?? key;
}
