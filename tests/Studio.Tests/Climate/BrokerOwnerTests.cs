using Microsoft.Extensions.DependencyInjection;
using Studio.Climate;
using Studio.Settings;
using Studio.SignIn;
using Studio.Tests.SignIn;

namespace Studio.Tests.Climate;

/// <summary>Whoever holds an open page must not send the broker's sealed password to a place of their own.</summary>
public sealed class BrokerOwnerTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    public ValueTask InitializeAsync() => studio.InitializeAsync();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Theory]
    [InlineData("elsewhere.example", 1, false)]
    [InlineData("127.0.0.1", 2, false)]
    [InlineData("127.0.0.1", 1, true)]
    public async Task Another_broker_port_or_way_needs_the_password_again(string host, int port, bool tls)
    {
        using var scope = studio.Scope("Wren");
        var book = scope.ServiceProvider.GetRequiredService<BrokerBook>();
        (await book.SaveAsync(new() { Host = "127.0.0.1", Port = 1, Password = "not in the open" }, "Wren")).Ok.ShouldBeTrue();

        (await book.SaveAsync(new() { Host = host, Port = port, Tls = tls }, "Wren")).Words.ShouldBe(BrokerBook.PasswordAgain);
        var kept = (await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync()).Broker!;
        (kept.Host, kept.Port, kept.Tls, book.Password(kept)).ShouldBe(("127.0.0.1", 1, false, "not in the open"));

        (await book.SaveAsync(new() { Host = host, Port = port, Tls = tls, Password = "typed again" }, "Wren")).Ok.ShouldBeTrue();
        book.Password((await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync()).Broker!).ShouldBe("typed again");
    }

    [Fact]
    public async Task Another_user_at_the_same_broker_keeps_it_and_none_lets_it_go()
    {
        using var scope = studio.Scope("Wren");
        var book = scope.ServiceProvider.GetRequiredService<BrokerBook>();
        await book.SaveAsync(new() { Host = "127.0.0.1", Port = 1, Password = "not in the open" }, "Wren");
        (await book.SaveAsync(new() { Host = "127.0.0.1", Port = 1, User = "bench" }, "Wren")).Ok.ShouldBeTrue();
        book.Password((await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync()).Broker!).ShouldBe("not in the open");

        (await book.SaveAsync(new(), "Wren")).Ok.ShouldBeTrue();
        (await book.SaveAsync(new() { Host = "elsewhere.example", Port = 1 }, "Wren")).Ok.ShouldBeTrue();
        (await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync()).Broker!.SealedPassword.ShouldBe("");
    }

    [Fact]
    public async Task A_maker_cannot_set_it()
    {
        await studio.AddAsync("Ash", Roles.Maker);
        using var browser = await studio.SignedInAsync("ash@studio.example");
        await using var page = await studio.PageAsync("ash@studio.example");
        (await page.Services.GetRequiredService<BrokerBook>().SaveAsync(new() { Host = "elsewhere.example", Port = 1, Password = "x" }, "Ash")).Words.ShouldContain("owner");
        (await browser.GetStringAsync(new Uri("/room", UriKind.Relative), TestContext.Current.CancellationToken)).ShouldNotContain("Password of the broker");
    }
}
