using Studio.Data;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>Water checks: fills to a mark, and what the mould's volumes are scaled by.</summary>
public sealed partial class MouldBook
{
    private const string Gone = "This mould is no longer in the stores.";

    /// <summary>The checks against the measures as they are typed now.</summary>
    public WaterLook Water(MouldForm form)
    {
        var numbered = form.Checks.Select((c, i) => (Check: c, Number: i)).ToList();
        if (numbered.Count == 0 || MouldShapes.Make(SpecOf(form)) is not { Ok: true } made)
        {
            return new() { Rows = [.. numbered.Select(n => new WaterRow(n.Number, n.Check, null, null))] };
        }

        var sum = Compare(made.Value, form.Checks);
        return new()
        {
            Rows = [.. numbered.Select(n => Row(n.Number, n.Check, sum.Ok ? sum.Value.Marks[n.Number] : null))],
            Sum = sum.Ok ? sum.Value : null,
            Errors = sum.Errors,
            Offer = sum is { Ok: true, Value: { Usable: true } found } && !form.Remeasured && (Factor(found), Spread(found)) != (form.VolumeFactor, form.VolumeSpreadPercent),
        };
    }

    /// <summary>Records a fill up to a mark. The form takes over the checks; what else was typed in it stays.</summary>
    public Task<Saved> CheckAsync(MouldForm form, double heightMm, double volumeMl, string by) => ChangeAsync(form, by, mould =>
    {
        var check = new WaterCheck(heightMm, volumeMl, clock.GetUtcNow().UtcDateTime, by);
        if (MouldShapes.Make(mould.Spec with { VolumeFactor = 1 }) is { Ok: true } made && Compare(made.Value, [check]) is { Ok: false } wrong)
        {
            return wrong.Errors[0].Message;
        }

        mould.Checks = [.. mould.Checks, check];
        return null;
    });

    /// <summary>Takes a check out; what the mould is scaled by stays until it is scaled anew.</summary>
    public Task<Saved> DropCheckAsync(MouldForm form, int number, string by) => ChangeAsync(form, by, mould =>
    {
        mould.Checks = [.. mould.Checks.Where((_, i) => i != number)];
        return null;
    });

    /// <summary>Puts a check back where it was.</summary>
    public Task<Saved> BringCheckBackAsync(MouldForm form, int number, WaterCheck check, string by) => ChangeAsync(form, by, mould =>
    {
        var place = Math.Clamp(number, 0, mould.Checks.Count);
        mould.Checks = [.. mould.Checks.Take(place), check, .. mould.Checks.Skip(place)];
        return null;
    });

    /// <summary>Scales the mould's volumes by what its checks say, from now on; what was poured and quoted keeps its figures.</summary>
    public Task<Saved> ScaleAsync(MouldForm form, string by) => ChangeAsync(form, by, mould =>
    {
        if (MouldShapes.Make(mould.Spec with { VolumeFactor = 1 }) is not { Ok: true } made || Compare(made.Value, mould.Checks) is not { Ok: true, Value: { Usable: true } sum })
        {
            return "These checks give no factor that a mould can be scaled by. Look at the marks and the measures again.";
        }

        (mould.VolumeFactor, mould.VolumeSpreadPercent) = (Factor(sum), Spread(sum));
        return null;
    });

    /// <summary>Takes the scaling back, or puts an earlier one in its place.</summary>
    public Task<Saved> SetScaleAsync(MouldForm form, double factor, double? spreadPercent, string by) => ChangeAsync(form, by, mould =>
    {
        (mould.VolumeFactor, mould.VolumeSpreadPercent) = (factor, spreadPercent);
        return null;
    });

    private static Engine.Outcome<WaterCheckResult> Compare(Engine.Moulds.MouldBody drawn, IReadOnlyList<WaterCheck> checks) =>
        WaterCheckSum.Run(drawn, [.. checks.Select(c => new FillReading(c.HeightMm, c.VolumeMl))]);

    private static WaterRow Row(int number, WaterCheck check, WaterMark? mark) => new(number, check, mark?.ComputedMl, mark is null ? null : (mark.Ratio - 1) * 100);

    // what is shown is what is kept
    private static double Factor(WaterCheckResult sum) => Math.Round(sum.Factor, 3);

    private static double? Spread(WaterCheckResult sum) => Math.Round(sum.SpreadPercent, 1);

    private Task<Saved> ChangeAsync(MouldForm form, string by, Func<Mould, string?> change) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Mould>().FindAsync(form.Id) is not { } mould)
        {
            return Saved.Refused(Gone);
        }

        if (mould.Version != form.Version)
        {
            return Saved.Stale();
        }

        if (change(mould) is { } words)
        {
            return Saved.Refused(words);
        }

        await db.SaveChangesAsync();
        form.TakeChecks(mould);
        news.Tell(News.Stores, mould.Id);
        return Saved.Done(mould.Id);
    });
}
