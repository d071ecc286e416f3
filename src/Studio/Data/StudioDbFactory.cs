using Microsoft.EntityFrameworkCore;

namespace Studio.Data;

/// <summary>Makes a context an operation, whichever database the studio uses, with the clock's time and the mesh folder on it.</summary>
public sealed class StudioDbFactory<T>(IDbContextFactory<T> inner, TimeProvider clock, Files.MeshFolder? meshes = null) : IDbContextFactory<StudioDb>
    where T : StudioDb
{
    public StudioDb CreateDbContext()
    {
        var db = inner.CreateDbContext();
        (db.Now, db.Meshes) = (clock.GetUtcNow().UtcDateTime, meshes);
        return db;
    }
}
