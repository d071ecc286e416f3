using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Studio.Data;

/// <summary>Lets the migration tool make the SQLite context without starting the studio.</summary>
internal sealed class SqliteDesignTime : IDesignTimeDbContextFactory<SqliteStudioDb>
{
    public SqliteStudioDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteStudioDb>().UseSqlite("Data Source=design.db").Options);
}

/// <summary>Lets the migration tool make the PostgreSQL context without a server.</summary>
internal sealed class PostgresDesignTime : IDesignTimeDbContextFactory<PostgresStudioDb>
{
    public PostgresStudioDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresStudioDb>().UseNpgsql("Host=localhost;Database=design").Options);
}
