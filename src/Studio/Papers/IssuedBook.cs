using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Data.Files;

namespace Studio.Papers;

/// <summary>A paper ready to be opened or saved.</summary>
public sealed record PaperFile(byte[] Content, string FileName);

/// <summary>Keeps every paper that leaves the studio as it left, and gives out copies that say that they are copies.</summary>
public sealed class IssuedBook(IDbContextFactory<StudioDb> factory, PaperFolder folder, TimeProvider clock)
{
    /// <summary>Adds a paper to the caller's open context: its bytes are on disk before the caller's save names them.</summary>
    /// <param name="db">Nothing is saved here.</param>
    /// <param name="paper">Without hash and length.</param>
    /// <param name="content">As it leaves.</param>
    public async Task<IssuedPaper> KeepAsync(StudioDb db, IssuedPaper paper, byte[] content)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(paper);
        ArgumentNullException.ThrowIfNull(content);
        (paper.Hash, paper.Bytes, paper.At) = (await folder.AddAsync(content), content.Length, clock.GetUtcNow().UtcDateTime);
        db.Add(paper);
        return paper;
    }

    /// <summary>A commission's papers, newest first.</summary>
    public async Task<IReadOnlyList<IssuedPaper>> OfCommissionAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<IssuedPaper>().AsNoTracking().Where(p => p.CommissionId == commissionId).OrderByDescending(p => p.Id).ToListAsync();
    }

    /// <summary>The newest paper of a record; null when none left.</summary>
    public async Task<IssuedPaper?> LastAsync(string kind, int refId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<IssuedPaper>().AsNoTracking().Where(p => p.Kind == kind && p.RefId == refId).OrderByDescending(p => p.Id).FirstOrDefaultAsync();
    }

    /// <summary>The bytes as they left; null when there is no such paper or its file is lost.</summary>
    public async Task<PaperFile?> AsItLeftAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<IssuedPaper>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == id) is { } paper && await folder.ReadAsync(paper.Hash) is { } content
            ? new(content, paper.FileName)
            : null;
    }

    /// <summary>The paper as it left, marked as a copy on every page; null when there is no such paper or its file is lost.</summary>
    /// <param name="id">The paper.</param>
    /// <param name="state">What became of it since, such as "accepted on 7 November 2026"; empty for nothing to say.</param>
    public async Task<PaperFile?> CopyAsync(int id, string state = "")
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<IssuedPaper>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == id) is not { } paper || await folder.ReadAsync(paper.Hash) is not { } content)
        {
            return null;
        }

        return new(PaperCopy.Mark(content, state.Length > 0 ? $"Copy. {char.ToUpperInvariant(state[0])}{state[1..]}" : "Copy"), paper.FileName.Replace(".pdf", "-copy.pdf", StringComparison.Ordinal));
    }
}
