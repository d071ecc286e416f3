using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Studio.SignIn;

/// <summary>One thing that happened at the door. It names people by their number only and addresses shortened, so that it can be kept and shown.</summary>
public sealed class AccessEntry
{
    public int Id { get; set; }

    /// <summary>[UTC]</summary>
    public DateTime At { get; set; }

    /// <summary>One of the constants of <see cref="AccessKind"/>.</summary>
    public string Kind { get; set; } = "";

    /// <summary>Whom it concerns; empty where the e-mail that was typed is nobody's.</summary>
    public string UserId { get; set; } = "";

    /// <summary>Who did it, where that is somebody else.</summary>
    public string ByUserId { get; set; } = "";

    /// <summary>The kind's own detail as a key: why it ended, which role, which page.</summary>
    public string Detail { get; set; } = "";

    /// <summary>Shortened as <see cref="SignIn.Network.Shortened"/> does; empty where there was none to see.</summary>
    public string Network { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<AccessEntry>
    {
        public void Configure(EntityTypeBuilder<AccessEntry> builder) => builder.ToTable(nameof(AccessEntry));
    }
}

/// <summary>What can happen at the door.</summary>
public static class AccessKind
{
    public const string SignedIn = "signed in";

    /// <summary>A wrong password, an e-mail that is nobody's, or a retired person.</summary>
    public const string Failed = "failed";

    /// <summary>Too many tries in a row: this one was not looked at.</summary>
    public const string Delayed = "delayed";

    /// <summary>More failures in a minute than are written down one by one.</summary>
    public const string Flood = "flood";

    public const string Ended = "ended";

    /// <summary>A cookie whose sign-in had ended was brought again.</summary>
    public const string Stale = "stale";

    /// <summary>A signed-in person asked for what their role does not reach.</summary>
    public const string NotTheirs = "not theirs";

    public const string Added = "added";
    public const string Role = "role";
    public const string Password = "password";
    public const string Retired = "retired";
    public const string BroughtBack = "brought back";
}
