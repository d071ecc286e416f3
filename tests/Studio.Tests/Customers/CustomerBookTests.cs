using Studio.Customers;
using Studio.Data;

namespace Studio.Tests.Customers;

public sealed class CustomerBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();

    private CustomerBook Book => new(studio.Factory, studio.News);

    public void Dispose() => studio.Dispose();

    [Theory]
    [InlineData("isla", "Isla Harrow")]
    [InlineData("HARROW", "Isla Harrow")]
    [InlineData("mÁrch odi", "Odile Márchand")]
    [InlineData("márch", "Odile Márchand")]
    [InlineData("MÁRCH", "Odile Márchand")]
    [InlineData("960456", "Ruan 100% Teague")]
    [InlineData("100%", "Ruan 100% Teague")]
    [InlineData("example.net", "Odile Márchand")]
    public async Task Customers_are_found_by_any_part_in_any_case(string typed, string name)
    {
        await ArrangeAsync();
        (await Book.ListAsync(typed, 50)).Lines.Select(c => c.Name).ShouldBe([name]);
    }

    [Theory]
    [InlineData("%")]
    [InlineData("_")]
    [InlineData("'; drop table Customer; --")]
    public async Task Signs_of_the_database_are_only_letters(string typed)
    {
        await ArrangeAsync();
        (await Book.ListAsync(typed, 50)).Lines.Count.ShouldBe(typed == "%" ? 1 : 0);
        (await Book.ListAsync("", 50)).Lines.Count.ShouldBe(3);
    }

    [Fact]
    public async Task The_ledger_comes_in_pages()
    {
        await ArrangeAsync();
        var page = await Book.ListAsync("", 2);
        (page.Lines.Count, page.More, page.Any).ShouldBe((2, true, true));
        (await Book.ListAsync("nobody of this name", 2)).Any.ShouldBeTrue();
    }

    [Fact]
    public async Task Two_people_saving_the_same_customer_lose_nothing()
    {
        await ArrangeAsync();
        var hers = (await Book.ReadAsync(1))!;
        var his = (await Book.ReadAsync(1))!;
        hers.Phone = "01632 960 999";
        his.Email = "new@example.org";

        (await Book.SaveAsync(hers, "Wren")).Ok.ShouldBeTrue();
        (await Book.SaveAsync(his, "Ash")).Words.ShouldBe(Saved.SomeoneElse);

        var kept = (await Book.ReadAsync(1))!;
        (kept.Phone, kept.Email).ShouldBe(("01632 960 999", "isla@example.org"));
    }

    private async Task ArrangeAsync()
    {
        foreach (var customer in new[]
        {
            new Customer { Name = "Isla Harrow", Email = "isla@example.org" },
            new Customer { Name = "Odile Márchand", Email = "odile@example.net" },
            new Customer { Name = "Ruan 100% Teague", Phone = "+44 1632 960456" },
        })
        {
            (await Book.SaveAsync(customer, "Wren")).Ok.ShouldBeTrue();
        }
    }
}
