using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Resins;
using Studio.Stores;
using Mould = Studio.Moulds.Mould;

namespace Studio.Tests.Stores;

public sealed class CatalogueSeedTests : IDisposable
{
    private readonly StudioDatabase database = new();

    public void Dispose() => database.Dispose();

    [Fact]
    public void Every_density_names_its_source() =>
        CatalogueSeed.Read<Material>("materials").Rows.Where(m => m.DensityGPerMl is not null).ShouldAllBe(m => m.DensitySource.Length > 5);

    [Fact]
    public void No_density_looks_mistyped() =>
        CatalogueSeed.Read<Material>("materials").Rows.ShouldAllBe(m => !MaterialBook.Glance(MaterialForm.Of(m)).Doubts.Any(d => d.Code.StartsWith("figure-", StringComparison.Ordinal)));

    [Fact]
    public void Every_resin_computes_a_layer_in_every_mould()
    {
        foreach (var mould in CatalogueSeed.Read<Mould>("moulds").Rows)
        {
            foreach (var resin in CatalogueSeed.Read<Resin>("resins").Rows)
            {
                var result = LayersCalculation.Run(new LayersInput
                {
                    Mould = mould.Spec,
                    Resins = new Dictionary<string, Engine.Resins.ResinSpec>(StringComparer.Ordinal) { ["r"] = resin.Spec },
                    Layers = [new LayerSpec { Name = "First", Resin = "r", ThicknessMm = 5 }],
                });
                result.Ok.ShouldBeTrue(string.Join(" ", result.Errors.Select(e => $"{mould.Name}, {resin.Name}: {e.Path} {e.Message}")));
            }
        }
    }

    // a third of base area times height: Machinery's Handbook, volumes of solids
    [Fact]
    public void The_tall_pyramid_holds_a_third_of_its_box() =>
        MouldShapes.Make(CatalogueSeed.Read<Mould>("moulds").Rows[0].Spec).Value.CapacityMl.ShouldBe(150 * 150 * 150 / 3.0 / 1000, 0.001);

    [Fact]
    public void Every_resin_is_marked_as_a_typical_sheet() =>
        CatalogueSeed.Read<Resin>("resins").Rows.ShouldAllBe(r => r.Typical && r.SheetNote.StartsWith("Typical for its class, to be replaced by your own data sheet", StringComparison.Ordinal));

    // 2 : 1 by volume with 1.15 and 1.00 g/ml is 100 : 43.5 by weight and mixes to 1.10 g/ml (mass = volume × density)
    [Fact]
    public void Parts_by_volume_and_by_weight_agree_within_the_sheets_rounding()
    {
        var resins = CatalogueSeed.Read<Resin>("resins").Rows;
        var byVolume = resins.Single(r => r is { MixBy: "volume", PartsA: 2 });
        (100 * byVolume.PartsB * byVolume.DensityBGPerMl!.Value / (byVolume.PartsA * byVolume.DensityAGPerMl!.Value)).ShouldBe(43.5, 0.05);
        resins.Where(r => r is { MixBy: "weight" }).ShouldAllBe(r => Math.Abs((100 * r.PartsB / r.PartsA) - 43.5) < 0.6);
    }

    [Fact]
    public async Task Planted_once_it_is_never_planted_again()
    {
        await PlantAsync();
        await using (var db = database.Open())
        {
            var mould = await db.Set<Mould>().FirstAsync(TestContext.Current.CancellationToken);
            (mould.Name, mould.Retired) = ("My own name", true);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await PlantAsync();
        await using var after = database.Open();
        (await after.Set<Mould>().CountAsync(TestContext.Current.CancellationToken)).ShouldBe(CatalogueSeed.Read<Mould>("moulds").Rows.Count);
        (await after.Set<Mould>().CountAsync(m => m.Retired, TestContext.Current.CancellationToken)).ShouldBe(1);
    }

    [Fact]
    public async Task A_studio_with_one_mould_of_its_own_is_left_alone()
    {
        await using (var db = database.Open())
        {
            db.Add(new Mould { Name = "Mine", Dimensions = new() { ["sides"] = 4, ["baseMm"] = 90, ["heightMm"] = 90 } });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await PlantAsync();
        await using var after = database.Open();
        (await after.Set<Resin>().AnyAsync(TestContext.Current.CancellationToken)).ShouldBeFalse();
    }

    [Fact]
    public async Task Invented_prices_are_marked_in_the_history()
    {
        await PlantAsync();
        await using var db = database.Open();
        var marked = await db.Set<AuditEntry>().CountAsync(a => a.Act == CatalogueSeed.Act, TestContext.Current.CancellationToken);
        marked.ShouldBe(CatalogueSeed.Read<Material>("materials").Rows.Count(m => m.PackPrice > 0));
    }

    private async Task PlantAsync()
    {
        await using var db = database.Open();
        await new CatalogueSeed().PlantAsync(db);
    }
}
