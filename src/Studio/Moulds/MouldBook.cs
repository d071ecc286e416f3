using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>One line of the ledger of moulds.</summary>
/// <param name="CapacityMl">To the rim; null when its figures no longer make a mould.</param>
public sealed record MouldLine(int Id, string Name, MouldSpec Spec, double? CapacityMl, MouldSketch? Sketch, int Owned, string Notes, bool Retired);

/// <summary>A mould cut through the middle, as it stands for casting.</summary>
/// <param name="HeightMm">From the lowest point to the rim.</param>
/// <param name="WidestMm">Half of the widest place.</param>
/// <param name="Wall">The right-hand wall from the bottom up: height and half width.</param>
public sealed record MouldSketch(double HeightMm, double WidestMm, IReadOnlyList<WallPoint> Wall)
{
    /// <summary>The longer of width and height, for scaling a drawing.</summary>
    public double LongestMm => Math.Max(2 * WidestMm, HeightMm);
}

/// <summary>A shape that can be chosen, with a section of sound proportions.</summary>
public sealed record MouldExample(string Key, string Words, MouldSketch? Sketch);

/// <summary>Where the wall stands at a height.</summary>
public sealed record WallPoint(double ZMm, double HalfWidthMm);

/// <summary>What the dimensions typed so far make.</summary>
public sealed record MouldGlance(double? CapacityMl, MouldSketch? Sketch, IReadOnlyList<Finding> Doubts);

/// <summary>Reads and writes moulds.</summary>
public sealed class MouldBook(IDbContextFactory<StudioDb> factory, News news)
{
    private const int WallSteps = 24;

    /// <summary>Every shape of the engine, drawn by the engine itself: a new one appears here without a line of its own.</summary>
    public static IReadOnlyList<MouldExample> Examples { get; } =
        [.. MouldShapes.All.Select(s => new MouldExample(s.Key, s.DisplayName, Glance(new MouldSpec(s.Key, s.Dimensions.ToDictionary(d => d.Name, Example, StringComparer.Ordinal))).Sketch))];

    /// <summary>Every mould by name, retired ones too if asked for.</summary>
    public async Task<IReadOnlyList<MouldLine>> ListAsync(bool retired = false)
    {
        await using var db = await factory.CreateDbContextAsync();
        var all = await db.Set<Mould>().AsNoTracking().Where(m => retired || !m.Retired).ToListAsync();
        return [.. all.OrderBy(m => m.Name, StringComparer.OrdinalIgnoreCase).Select(Line)];
    }

    /// <summary>The form of one mould, or null when there is none of that number.</summary>
    public async Task<MouldForm?> FormAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Mould>().AsNoTracking().SingleOrDefaultAsync(m => m.Id == id) is { } mould ? MouldForm.Of(mould) : null;
    }

    /// <summary>How many pieces are drawn in it.</summary>
    public async Task<int> UsesAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();

        // by table name: moulds come before pieces and know nothing of them
        return await db.Database.SqlQuery<int>($"""SELECT CAST(COUNT(*) AS int) AS "Value" FROM "Piece" WHERE "MouldId" = {id}""").SingleAsync();
    }

    /// <summary>Keeps a form that the validator has passed.</summary>
    public Task<Saved> SaveAsync(MouldForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var mould = form.ToMould();
        if (await TakenAsync(db, mould))
        {
            return Saved.Refused($"There is a mould called “{mould.Name}” already. Give this one a name of its own.");
        }

        var kept = mould.Id == 0 ? db.Add(mould).Entity : await db.OverwriteAsync(mould);
        await db.SaveChangesAsync();
        news.Tell(News.Stores, kept.Id);
        return Saved.Done(kept.Id);
    });

    /// <summary>Takes it out of the lists; pieces drawn in it keep it.</summary>
    public Task<Saved> RetireAsync(int id, string by) => SetRetiredAsync(id, retired: true, by);

    /// <summary>Puts it back into the lists.</summary>
    public Task<Saved> RestoreAsync(int id, string by) => SetRetiredAsync(id, retired: false, by);

    /// <summary>Capacity and drawing of the dimensions typed so far; null while they make no mould.</summary>
    public static MouldGlance Glance(MouldSpec spec)
    {
        var made = MouldShapes.Make(spec);
        return made.Ok ? new(made.Value.CapacityMl, Sketch(made.Value), [.. Doubts(made.Value)]) : new(null, null, []);
    }

    private static double Example(Dimension d) => d switch
    {
        { Name: "heightMm" } => 90,
        { Name: "bottomDiameterMm" } => 70,
        { Name: "edgeMm" } => 52,
        { Whole: true } => d.Default ?? 6,
        { Default: { } otherwise } => otherwise,
        _ => Math.Clamp(100, d.Min, d.Max),
    };

    private static MouldLine Line(Mould m)
    {
        var glance = Glance(m.Spec);
        return new(m.Id, m.Name, m.Spec, glance.CapacityMl, glance.Sketch, m.Owned, m.Notes, m.Retired);
    }

    private static MouldSketch Sketch(Engine.Moulds.Mould mould)
    {
        var wall = Enumerable.Range(0, WallSteps + 1).Select(i => mould.HeightMm * i / WallSteps).Select(z => new WallPoint(z, mould.Outline.HalfWidthMm(z))).ToList();
        return new(mould.HeightMm, wall.Max(p => p.HalfWidthMm), wall);
    }

    private static IEnumerable<Finding> Doubts(Engine.Moulds.Mould mould)
    {
        var sketch = Sketch(mould);
        if (sketch.Wall[0].HalfWidthMm > sketch.Wall[^1].HalfWidthMm)
        {
            yield return new("undercut", Severity.Warn, "", "It is wider at the bottom than at its open top: a stiff mould would not let the piece out.", "geometry");
        }

        if (sketch.HeightMm < 8 || sketch.WidestMm < 5)
        {
            yield return new("very-small", Severity.Warn, "", "That is very small for a mould. If you measured in inches, type the unit: 6 in.", "our rule");
        }

        if (mould.CapacityMl > 20_000)
        {
            yield return new("very-large", Severity.Warn, "", "That holds more than 20 litres. Check the dimensions; so much resin at once grows dangerously hot.", "our rule");
        }
    }

    private static async Task<bool> TakenAsync(StudioDb db, Mould mould) =>
        !mould.Retired && (await db.Set<Mould>().Where(m => !m.Retired && m.Id != mould.Id).Select(m => m.Name).ToListAsync()).Contains(mould.Name, StringComparer.OrdinalIgnoreCase);

    private Task<Saved> SetRetiredAsync(int id, bool retired, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Mould>().FindAsync(id) is not { } mould)
        {
            return Saved.Refused("This mould is no longer in the stores.");
        }

        mould.Retired = retired;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, id);
        return Saved.Done(id);
    });
}
