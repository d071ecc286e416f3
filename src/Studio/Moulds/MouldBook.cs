using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Data.Files;
using Studio.Engine;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>One line of the ledger of moulds.</summary>
/// <param name="CapacityMl">To the rim, scaled where the mould is; null when its figures no longer make a mould.</param>
/// <param name="SpreadMl">How far that may be off by the water check [ml]; null where there was none.</param>
public sealed record MouldLine(int Id, string Name, MouldSpec Spec, double? CapacityMl, double? SpreadMl, MouldSketch? Sketch, int Owned, string Notes, bool Retired);

/// <summary>Reads and writes moulds.</summary>
public sealed partial class MouldBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, MeshFolder meshes, IMouldUse use)
{
    /// <summary>Every shape of the engine, drawn by the engine itself.</summary>
    public static IReadOnlyList<MouldExample> Examples => MouldSketches.Examples;

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

        return await use.PiecesAsync(db, id);
    }

    /// <summary>Keeps a form that the validator has passed; a mesh that makes no cavity is refused.</summary>
    public Task<Saved> SaveAsync(MouldForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var mould = form.ToMould();
        if (await TakenAsync(db, mould))
        {
            return Saved.Refused($"There is a mould called “{mould.Name}” already. Give this one a name of its own.");
        }

        if (mould.Mesh is { } mesh && meshes.Cavity(mesh.Stored, mesh.Source) is { Ok: false } refused)
        {
            return Saved.Refused($"The mesh “{mesh.Name}” makes no mould yet: {refused.Errors[0].Message}");
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

    /// <summary>Capacity and drawing of a mould; nulls while the figures make none.</summary>
    public static MouldGlance Glance(MouldSpec spec)
    {
        var made = MouldShapes.Make(spec);
        return !made.Ok ? new(null, null, []) : new(made.Value.CapacityMl, MouldSketches.Of(made.Value), [.. MouldDoubts.Of(made.Value)])
        {
            Made = made.Value,
            SpreadMl = made.Value.CapacityMl * spec.VolumeSpreadPercent / 100,
        };
    }

    /// <summary>What is typed so far makes: capacity, drawing, the fill's curve, and what to look at again.</summary>
    public MouldGlance Look(MouldForm form)
    {
        var spec = SpecOf(form);
        var glance = Glance(form.Remeasured ? spec : spec with { VolumeFactor = form.VolumeFactor, VolumeSpreadPercent = form.VolumeSpreadPercent });
        return form.Needs is MouldNeeds.Readings ? WithFill(glance, form.Fill, spec) : glance;
    }

    /// <summary>What a tilt does to a line at a height; null while the measures make no mould.</summary>
    /// <param name="form">The mould.</param>
    /// <param name="zMm">Height of the line, kept within the mould; null for the rim [mm].</param>
    /// <param name="visibleMm">How far it may run off [mm].</param>
    /// <param name="tilt">A tilt to look at; null for none.</param>
    /// <param name="perHundred">True when the tilt is a rise in mm over 100 mm, false when it is in degrees.</param>
    public LevelLook? Level(MouldForm form, double? zMm, double visibleMm, double? tilt, bool perHundred)
    {
        if (MouldShapes.Make(SpecOf(form)) is not { Ok: true, Value: var mould } || !(visibleMm > 0))
        {
            return null;
        }

        var z = Math.Clamp(zMm ?? mould.HeightMm, 0, mould.HeightMm);
        var across = Levelness.AcrossMm(mould, z);
        var most = Levelness.MostTiltDegrees(across, visibleMm);
        double? degrees = tilt is not { } t ? null : perHundred ? t is >= 0 and <= 100 ? Levelness.TiltDegrees(t) : null : t is >= 0 and <= Levelness.SteepestDegrees ? t : null;
        return new(z, across, most, Levelness.MmPer100Mm(most), degrees is { } d ? Levelness.RunOffMm(across, d) : null);
    }

    private MouldSpec SpecOf(MouldForm form) =>
        form is { Needs: MouldNeeds.Mesh, Mesh: { Unit.Length: > 0 } mesh } && meshes.Cavity(mesh.Stored, mesh.Source) is { Ok: true } read
            ? form.Spec with { Cavity = read.Value }
            : form.Spec;

    private static MouldGlance WithFill(MouldGlance glance, FillRows fill, MouldSpec spec)
    {
        var complete = fill.Complete;
        if (complete.Count == 0)
        {
            return glance;
        }

        var wrong = FillWords.Wrong(fill);
        var wild = wrong.Count > 0 ? [] : WildReadings.Find(fill.Readings).Select(f => f with { Path = FillWords.Row(f.Path, complete) }).ToList();
        return glance with { Troubles = wrong, Wild = wild, Curve = MouldSketches.Curve(fill, MouldShapes.Make(spec) is { Ok: true } made ? made.Value : null, wild.ConvertAll(w => w.Path)) };
    }

    private static MouldLine Line(Mould m)
    {
        var spec = m.Spec;
        var glance = Glance(spec);
        return new(m.Id, m.Name, spec, glance.CapacityMl, glance.SpreadMl, glance.Sketch, m.Owned, m.Notes, m.Retired);
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

/// <summary>Doubts about a mould's figures; none forbids anything.</summary>
internal static class MouldDoubts
{
    public static IEnumerable<Finding> Of(Engine.Moulds.MouldBody mould)
    {
        var sketch = MouldSketches.Of(mould);
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
}
