using Studio.Data;
using Studio.SignIn;
using Studio.Settings;

namespace Studio.Demo;

/// <summary>The demo studio: everything in it is invented.</summary>
internal sealed class DemoStudio(IServiceScopeFactory scopes, FirstStart first) : IDemo
{
    public async Task<Saved> LoadAsync()
    {
        if (!await first.EmptyAsync())
        {
            return await IsDemoAsync() ? Saved.Done() : Saved.Refused("This data folder holds a studio already, so the demo was not loaded into it. Start the demo with a folder of its own: -- demo --data demo-data");
        }

        var (user, wrong) = await first.MakeOwnerAsync("Demo owner", IDemo.Email, IDemo.Password);
        if (user is null)
        {
            return Saved.Refused(string.Join(" ", wrong));
        }

        await using var scope = scopes.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<SettingsBook>();
        var settings = await book.ReadAsync();
        settings.StudioName = "Heather & Brass";
        settings.Demo = true;
        return await book.SaveAsync(settings, user.DisplayName);
    }

    private async Task<bool> IsDemoAsync()
    {
        await using var scope = scopes.CreateAsyncScope();
        return (await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync()).Demo;
    }
}
