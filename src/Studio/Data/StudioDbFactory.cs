using Microsoft.EntityFrameworkCore;

namespace Studio.Data;

/// <summary>Makes a context an operation, whichever database the studio uses, with the clock's time on it.</summary>
public sealed class StudioDbFactory<T>(IDbContextFactory<T> inner, TimeProvider clock) : IDbContextFactory<StudioDb>
    where T : StudioDb
{
    public StudioDb CreateDbContext()
    {
        var db = inner.CreateDbContext();
        db.Now = clock.GetUtcNow().UtcDateTime;
        return db;
    }
}
