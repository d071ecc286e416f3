using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Papers;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Demo;

/// <summary>The demo studio: everything in it is invented, and its grams and prices are computed by the same engine as anybody's.</summary>
internal sealed class DemoStudio(IServiceScopeFactory scopes, FirstStart first, TimeProvider clock, News news) : IDemo
{
    private const string Owner = "Demo owner";

    public async Task<Saved> LoadAsync()
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs(Owner);
        var book = scope.ServiceProvider.GetRequiredService<SettingsBook>();
        var settings = await book.ReadAsync();
        if (!await first.EmptyAsync())
        {
            return settings.Demo ? Saved.Done() : Saved.Refused("This data folder holds a studio already, so the demo was not loaded into it. Start the demo with a folder of its own: dotnet run --project src/Studio -- demo --data demo-data");
        }

        var (user, wrong) = await first.MakeOwnerAsync(Owner, IDemo.Email, IDemo.Password);
        if (user is null)
        {
            return Saved.Refused(string.Join(" ", wrong));
        }

        Furnish(settings);
        var saved = await book.SaveAsync(settings, Owner);
        if (!saved.Ok)
        {
            return saved;
        }

        await TellAsync(scope.ServiceProvider, settings);
        news.Tell(News.Piece);
        return Saved.Done();
    }

    private static void Furnish(StudioSettings settings)
    {
        settings.StudioName = "Heather & Brass";
        settings.Address = "The Old Sail Loft, Quay Lane";
        settings.Email = "hello@studio.example";
        settings.Phone = "01632 960100";
        settings.TaxPercent = 20;
        settings.LabourRatePerHour = 22;
        settings.OverheadMonthly = 320;
        settings.PackagingCost = 6;
        settings.DeliveryCost = 9;
        settings.FeePercent = 1.5m;
        settings.FeeFixed = 0.20m;
        settings.RoundTo = 5;
        settings.Demo = true;
    }

    private async Task TellAsync(IServiceProvider services, StudioSettings settings)
    {
        await using var db = await services.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync();
        db.By = Owner;
        var now = clock.GetUtcNow().UtcDateTime;
        db.AddRange(Room(now));
        var teller = new DemoTeller(db, settings, now, Owner);
        await teller.StartAsync(services);
        foreach (var commission in DemoStory.All)
        {
            await teller.TellAsync(commission);
        }

        await db.SaveChangesAsync();
        await new DemoPapers(db, services.GetRequiredService<IssuedBook>(), services.GetRequiredService<PieceTimeBook>(), settings, Owner).KeepAsync();
    }

    // a steady workshop near 21 °C, a little cooler at night, read every few hours for three months
    private static IEnumerable<Reading> Room(DateTime now) =>
        from hours in Enumerable.Range(0, 400).Select(i => i < 60 ? (i * 4) + 0.5 : 240 + ((i - 60) * 5))
        let night = Math.Cos((hours % 24) / 24 * 2 * Math.PI)
        select new Reading { At = now.AddHours(-hours), Place = RoomBook.CastingRoom, Celsius = Math.Round(21 + (0.4 * night), 1), HumidityPercent = 48, By = Owner };
}
