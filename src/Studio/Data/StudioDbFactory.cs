using Microsoft.EntityFrameworkCore;

namespace Studio.Data;

/// <summary>
/// Makes a context an operation, whichever database the studio uses, with the clock's time, the mesh folder and whoever is at work on it.
/// Without a writer its contexts read and cannot write.
/// </summary>
public sealed class StudioDbFactory<T>(IDbContextFactory<T> inner, TimeProvider clock, Files.MeshFolder? meshes = null, IWriter? writer = null) : IDbContextFactory<StudioDb>
    where T : StudioDb
{
    public StudioDb CreateDbContext()
    {
        var db = inner.CreateDbContext();
        (db.Now, db.Meshes, db.Writer) = (clock.GetUtcNow().UtcDateTime, meshes, writer);
        return db;
    }
}
