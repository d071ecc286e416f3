using Studio.Data;
using Studio.Stores;

namespace Studio.Tests.Stores;

public sealed class MaterialBookTests : IDisposable
{
    private readonly StudioDatabase database = new();
    private readonly MaterialBook book;

    public MaterialBookTests() => book = new MaterialBook(database.Factory, database.News);

    public void Dispose() => database.Dispose();

    [Fact]
    public async Task A_material_comes_back_as_it_was_kept()
    {
        var id = (await book.SaveAsync(Brass(), "Ada")).Id;
        var back = (await book.FormAsync(id))!;
        (back.Name, back.DensityGPerMl, back.DensitySource, back.PackPrice).ShouldBe(("Brass turnings", 8.5, "weighed by me", 9));
    }

    [Fact]
    public async Task A_small_price_a_gram_is_said_for_a_hundred()
    {
        await book.SaveAsync(Brass(), "Ada");
        var line = (await book.ListAsync()).Single();
        (line.PriceFor, line.Price).ShouldBe((100, 3.6m));
        line.UnitPrice.ShouldBe(0.036m);
    }

    [Fact]
    public async Task A_price_of_the_catalogue_is_invented_until_somebody_enters_their_own()
    {
        await using (var db = database.Open())
        {
            await new CatalogueSeed().PlantAsync(db);
        }

        var line = (await book.ListAsync()).First(l => l.PackPrice > 0);
        line.PriceInvented.ShouldBeTrue();
        var form = (await book.FormAsync(line.Id))!;
        form.PackPrice += 1;
        await book.SaveAsync(form, "Ada");
        (await book.ListAsync()).Single(l => l.Id == line.Id).PriceInvented.ShouldBeFalse();
        (await book.PriceInventedAsync(line.Id)).ShouldBeFalse();
    }

    [Fact]
    public async Task Changing_something_else_leaves_the_price_marked_as_invented()
    {
        await using (var db = database.Open())
        {
            await new CatalogueSeed().PlantAsync(db);
        }

        var line = (await book.ListAsync()).First(l => l.PackPrice > 0);
        await book.RetireAsync(line.Id, "Ada");
        (await book.PriceInventedAsync(line.Id)).ShouldBeTrue();
    }

    [Fact]
    public async Task A_save_over_somebody_elses_newer_version_is_refused()
    {
        var id = (await book.SaveAsync(Brass(), "Ada")).Id;
        var (mine, theirs) = ((await book.FormAsync(id))!, (await book.FormAsync(id))!);
        theirs.PackPrice = 10;
        await book.SaveAsync(theirs, "Bo");
        mine.PackPrice = 11;
        (await book.SaveAsync(mine, "Ada")).Words.ShouldBe(Saved.SomeoneElse);
        (await book.FormAsync(id))!.PackPrice.ShouldBe(10);
    }

    [Fact]
    public void A_density_without_its_source_is_refused()
    {
        var form = Brass();
        form.DensitySource = " ";
        new MaterialValidator().Validate(form).Errors.Select(e => e.PropertyName).ShouldBe(["DensitySource"]);
    }

    [Fact]
    public void An_empty_form_says_everything_at_once() =>
        new MaterialValidator().Validate(new MaterialForm()).Errors.Select(e => e.PropertyName).ShouldBe(["Name", "PackSize", "PackPrice"], ignoreOrder: true);

    [Theory]
    [InlineData(60)]
    [InlineData(0)]
    [InlineData(-0.1)]
    public void A_packing_share_outside_nothing_and_everything_is_refused(double share)
    {
        var form = Brass();
        form.PackingFraction = share;
        new MaterialValidator().Validate(form).Errors.Select(e => e.PropertyName).ShouldBe(["PackingFraction"]);
    }

    // Archimedes: beeswax 0.96 to 0.97 g/ml floats in resin of 1.10; amber 1.06 to 1.11 neither sinks nor floats for certain
    [Theory]
    [InlineData(0.965, "floats")]
    [InlineData(1.08, "drifts")]
    [InlineData(8.5, null)]
    public void What_floats_or_drifts_in_resin_is_said(double density, string? code)
    {
        var form = Brass();
        (form.Kind, form.DensityGPerMl) = ("hardware", density);
        MaterialBook.Glance(form).Doubts.Select(f => f.Code).ShouldBe(code is null ? [] : [code]);
    }

    // common practice, no source: the lightest metal that is cast in is magnesium, 1.74 g/ml, the heaviest platinum, 21.5
    [Theory]
    [InlineData("metal", 0.85, "8.5 g/ml was probably meant")]
    [InlineData("metal", 85, "8.5 g/ml was probably meant")]
    [InlineData("glass", 2500, "2.5 g/ml was probably meant, if the sheet prints kg/m³")]
    [InlineData("wax", 9.65, "0.965 g/ml was probably meant")]
    [InlineData("metal", 1.74, null)]
    [InlineData("metal", 21.5, null)]
    public void A_density_that_its_kind_does_not_have_is_doubted(string kind, double density, string? says)
    {
        var form = Brass();
        (form.Kind, form.DensityGPerMl) = (kind, density);
        var doubts = MaterialBook.Glance(form).Doubts.Where(d => d.Code == "figure-slipped").ToList();
        doubts.Count.ShouldBe(says is null ? 0 : 1);
        doubts.ShouldAllBe(d => d.Message.Contains(says!, StringComparison.Ordinal) && d.Path == nameof(form.DensityGPerMl));
    }

    [Fact]
    public async Task A_retired_material_leaves_the_list_and_comes_back()
    {
        var id = (await book.SaveAsync(Brass(), "Ada")).Id;
        await book.RetireAsync(id, "Ada");
        (await book.ListAsync()).ShouldBeEmpty();
        await book.RestoreAsync(id, "Ada");
        (await book.ListAsync()).ShouldHaveSingleItem();
    }

    private static MaterialForm Brass() => new() { Name = "Brass turnings", Kind = "metal", Unit = "g", DensityGPerMl = 8.5, DensitySource = "weighed by me", PackSize = 250, PackPrice = 9 };
}
