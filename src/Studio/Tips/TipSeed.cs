using System.Reflection;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Tips;

/// <summary>Plants each tip that came with the program once; what the maker changed or put away stays as it is, in older studios too.</summary>
public sealed class TipSeed : ISeed
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <summary>The tips of this version.</summary>
    public static IReadOnlyList<Tip> Read()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("seed/tips.json")
            ?? throw new InvalidOperationException("The seed file tips.json is not part of this program.");
        return JsonSerializer.Deserialize<SeedFile>(stream, Options)!.Rows;
    }

    public async Task PlantAsync(StudioDb db)
    {
        var there = await db.Set<Tip>().Where(t => t.Seed != "").Select(t => t.Seed).ToListAsync();
        var missing = Read().Where(t => !there.Contains(t.Seed, StringComparer.Ordinal)).ToList();
        if (missing.Count > 0)
        {
            db.AddRange(missing);
            await db.SaveChangesAsync();
        }
    }

    private sealed record SeedFile(string Note, IReadOnlyList<Tip> Rows);
}
