using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Office;

/// <summary>One's own sign-ins and password; everybody who is signed in has it.</summary>
public sealed partial class MePage(SessionBook book, SettingsBook settings, TimeProvider clock, ISnackbar snackbar)
{
    private Mine? mine;
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private string present = "";
    private string next = "";
    private string? wrong;
    private string refused = "";
    private string said = "";
    private bool busy;

    private SessionBook Book => book;

    protected override async Task OnInitializedAsync()
    {
        zone = await settings.ZoneAsync();
        mine = await book.MineAsync();
    }

    private string Line(SessionLine line)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        var from = line.Network.Length > 0 ? $", from {line.Network}" : "";
        return $"Since {Say.When(line.StartedAt, zone, now)}, last used {Say.When(line.SeenAt, zone, now)}{from}. Ends {Say.When(line.EndsAt, zone, now)}{(line.Extends ? " if it is not used before" : "")}.";
    }

    private async Task DoAsync(Func<Task<Saved>> act)
    {
        busy = true;
        said = (await act()).Words;
        mine = await book.MineAsync();
        busy = false;
    }

    private async Task PasswordAsync()
    {
        (wrong, refused) = (PasswordRules.Wrong(next, new("", mine!.Name, mine.Email)), "");
        if (busy || wrong is not null)
        {
            return;
        }

        busy = true;
        var saved = await book.ChangePasswordAsync(present, next);
        (busy, refused) = (false, saved.Words);
        if (saved.Ok)
        {
            (present, next) = ("", "");
            mine = await book.MineAsync();
            snackbar.Add("The new password counts from now on.");
        }
    }
}
