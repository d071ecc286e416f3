using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>One sign-in on one device, from the password to its end. A cookie only names it: what it is worth stands here.</summary>
public sealed class SignedIn
{
    /// <summary>128 random bits, 32 small hexadecimal digits.</summary>
    public string Id { get; set; } = "";

    public string UserId { get; set; } = "";

    /// <summary>The person's security stamp when it began; another one ends it, unless it was carried over.</summary>
    public string Stamp { get; set; } = "";

    public DateTime StartedAt { get; set; }

    /// <summary>When it was last used, to five minutes.</summary>
    public DateTime SeenAt { get; set; }

    /// <summary>What it is used on, in words, such as <c>Firefox on Linux</c>.</summary>
    public string Device { get; set; } = "";

    /// <summary>Where it came from, shortened as <see cref="Network.Shortened"/> does.</summary>
    public string Network { get; set; } = "";

    public DateTime? EndedAt { get; set; }

    /// <summary>One of the constants of <see cref="EndedBy"/>; empty while it stands.</summary>
    public string Ended { get; set; } = "";

    private sealed class Table : IEntityTypeConfiguration<SignedIn>
    {
        public void Configure(EntityTypeBuilder<SignedIn> builder)
        {
            builder.ToTable(nameof(SignedIn));
            builder.HasIndex(s => s.UserId);
            // a person who is removed by hand takes theirs along: nothing may stand for nobody
            builder.HasOne<StudioUser>().WithMany().HasForeignKey(s => s.UserId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>Why a sign-in ended.</summary>
public static class EndedBy
{
    public const string SignOut = "signed out";
    public const string Elsewhere = "signed out from another device";
    public const string SignInAnew = "signed in anew";
    public const string Password = "new password";
    public const string Role = "other role";
    public const string Retired = "retired";
    public const string Unused = "unused";
    public const string Age = "age";
}
