using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Settings;

namespace Studio.Tests.Commissions;

public sealed class CommissionBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();

    private CommissionBook Book => new(studio.Factory, studio.Clock, studio.News);

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task An_enquiry_writes_the_customer_the_commission_and_the_first_sentence()
    {
        var saved = await Book.CreateAsync(Enquiry() with { Email = " isla@example.org ", NeededBy = new DateOnly(2026, 4, 12) }, "Wren");

        saved.Ok.ShouldBeTrue(saved.Words);
        await using var db = studio.Open();
        var commission = await db.Set<Commission>().Include(c => c.Customer).SingleAsync(Cancel);
        commission.Number.ShouldBe("26-001");
        commission.Customer!.Name.ShouldBe("Isla Harrow");
        commission.Customer.Email.ShouldBe("isla@example.org");
        commission.NeededBy.ShouldBe(new DateOnly(2026, 4, 12));
        var first = await db.Set<CommissionEvent>().SingleAsync(Cancel);
        (first.Kind, first.By, first.At).ShouldBe(("stands", "Wren", new DateTime(2026, 3, 2, 9, 0, 0, DateTimeKind.Utc)));
        first.Words.ShouldBe("Isla Harrow asked for “A pyramid with heather”.");
    }

    [Fact]
    public async Task A_known_customer_is_not_written_down_twice()
    {
        var first = await Book.CreateAsync(Enquiry(), "Wren");
        await using var db = studio.Open();
        var customer = await db.Set<Commission>().Where(c => c.Id == first.Id).Select(c => c.CustomerId).SingleAsync(Cancel);

        await Book.CreateAsync(Enquiry() with { CustomerId = customer, Title = "A second one" }, "Wren");

        (await db.Set<Customer>().CountAsync(Cancel)).ShouldBe(1);
    }

    [Fact]
    public async Task Thirty_people_saving_at_once_are_given_thirty_numbers_without_a_gap()
    {
        var saves = await Task.WhenAll(Enumerable.Range(1, 30).Select(i => Task.Run(() => Book.CreateAsync(Enquiry() with { Title = $"Piece {i.ToString(CultureInfo.InvariantCulture)}" }, "Wren"))));

        saves.ShouldAllBe(s => s.Ok);
        await using var db = studio.Open();
        var numbers = await db.Set<Commission>().Select(c => c.Number).ToListAsync(Cancel);
        numbers.Order(StringComparer.Ordinal).ShouldBe(Enumerable.Range(1, 30).Select(i => "26-" + i.ToString("000", CultureInfo.InvariantCulture)));
    }

    [Fact]
    public async Task The_same_form_sent_many_times_at_once_is_noted_once()
    {
        var saves = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => Book.CreateAsync(Enquiry(), "Wren"))));

        saves.Select(s => s.Id).Distinct().ShouldHaveSingleItem();
        await using var db = studio.Open();
        (await db.Set<Commission>().CountAsync(Cancel)).ShouldBe(1);
        (await db.Set<Customer>().CountAsync(Cancel)).ShouldBe(1);
    }

    [Fact]
    public async Task The_same_words_a_day_later_are_another_enquiry()
    {
        var first = await Book.CreateAsync(Enquiry(), "Wren");
        studio.Clock.Advance(TimeSpan.FromDays(1));

        (await Book.CreateAsync(Enquiry(), "Wren")).Id.ShouldNotBe(first.Id);
    }

    [Fact]
    public async Task The_number_after_999_is_1000_and_counting_goes_on()
    {
        await Arrange("26-999", "26-099", "25-1234");

        var numbers = new List<string>();
        foreach (var title in new[] { "One", "Two" })
        {
            numbers.Add(await NumberOf((await Book.CreateAsync(Enquiry() with { Title = title }, "Wren")).Id));
        }

        numbers.ShouldBe(["26-1000", "26-1001"]);
    }

    [Fact]
    public async Task The_year_in_the_number_is_the_one_on_the_studios_wall()
    {
        await using (var db = studio.Open())
        {
            db.Add(new StudioSettings { TimeZone = "Pacific/Auckland" });
            await db.SaveChangesAsync(Cancel);
        }

        studio.Clock.SetUtcNow(new DateTimeOffset(2026, 12, 31, 20, 0, 0, TimeSpan.Zero)); // 09:00 on 1 January there

        (await NumberOf((await Book.CreateAsync(Enquiry(), "Wren")).Id)).ShouldBe("27-001");
    }

    [Fact]
    public async Task Two_people_saving_the_same_commission_lose_nothing()
    {
        var id = (await Book.CreateAsync(Enquiry(), "Wren")).Id;
        var hers = (await Book.ReadAsync(id))!;
        var his = (await Book.ReadAsync(id))!;
        hers.Occasion = "A birthday in May";
        his.Occasion = "A wedding";

        (await Book.EditAsync(hers, "Wren")).Ok.ShouldBeTrue();
        var refused = await Book.EditAsync(his, "Ash");

        refused.Ok.ShouldBeFalse();
        refused.Words.ShouldBe(Saved.SomeoneElse);
        his.Occasion.ShouldBe("A wedding", "what he typed stays in his form");
        (await Book.ReadAsync(id))!.Occasion.ShouldBe("A birthday in May");
    }

    [Fact]
    public async Task An_edit_says_in_the_story_what_it_changed()
    {
        var id = (await Book.CreateAsync(Enquiry(), "Wren")).Id;
        var form = (await Book.ReadAsync(id))!;
        form.NeededBy = new DateOnly(2026, 5, 9);

        (await Book.EditAsync(form, "Ash")).Ok.ShouldBeTrue();

        await using var db = studio.Open();
        (await db.Set<CommissionEvent>().OrderBy(e => e.Id).LastAsync(Cancel)).Words.ShouldBe("Changed: needed by from nothing to 9 May 2026.");
    }

    [Fact]
    public async Task An_empty_note_is_refused_and_a_note_is_kept_with_its_writer()
    {
        var id = (await Book.CreateAsync(Enquiry(), "Wren")).Id;

        (await Book.NoteAsync(id, "  \n ", "Ash")).Ok.ShouldBeFalse();
        (await Book.NoteAsync(id, "  Comes on Saturday with the tin. ", "Ash")).Ok.ShouldBeTrue();

        await using var db = studio.Open();
        (await db.Set<CommissionEvent>().Where(e => e.Kind == "note").Select(e => e.By + ": " + e.Words).ToListAsync(Cancel)).ShouldBe(["Ash: Comes on Saturday with the tin."]);
    }

    [Fact]
    public async Task Another_features_sentence_is_on_disk_exactly_when_its_own_save_is()
    {
        var id = (await Book.CreateAsync(Enquiry(), "Wren")).Id;
        await using (var db = studio.Open())
        {
            CommissionBook.Append(db, id, "quote", "Never saved.", "Wren");
        }

        await using (var db = studio.Open())
        {
            await CommissionBook.MoveIfAsync(db, id, Standing.Asked, Standing.Quoted, "A price was sent.", "Wren");
            await CommissionBook.MoveIfAsync(db, id, Standing.Agreed, Standing.Making, "Must not move.", "Wren");
            await db.SaveChangesAsync(Cancel);
        }

        await using var look = studio.Open();
        (await look.Set<CommissionEvent>().OrderBy(e => e.Id).Skip(1).Select(e => e.Words).ToListAsync(Cancel)).ShouldBe(["A price was sent."]);
        (await Book.ReadAsync(id))!.Stands.ShouldBe(Standing.Quoted);
    }

    [Fact]
    public async Task A_commission_that_is_not_there_is_refused_in_words()
    {
        (await Book.EditAsync(new Commission { Id = 77, Title = "x" }, "Wren")).Ok.ShouldBeFalse();
    }

    [Fact]
    public void Every_act_leads_from_a_known_place_to_another_and_every_place_has_one()
    {
        var places = Standing.All.Select(s => s.Key).ToList();
        Moves.All.ShouldAllBe(m => places.Contains(m.From) && places.Contains(m.To) && m.From != m.To);
        places.ShouldAllBe(p => Moves.From(p).Any());
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static EnquiryForm Enquiry() => new() { CustomerName = "Isla Harrow", Title = "A pyramid with heather", Remembers = "Bram Harrow, beekeeper" };

    private async Task Arrange(params string[] numbers)
    {
        await using var db = studio.Open();
        var customer = new Customer { Name = "Ruan Teague" };
        db.AddRange(numbers.Select(n => new Commission { Number = n, Customer = customer, Title = "Old" }));
        await db.SaveChangesAsync(Cancel);
    }

    private async Task<string> NumberOf(int id) => (await Book.ReadAsync(id))!.Number;
}
