using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Office;

/// <summary>Who may sign in, for the owner.</summary>
public sealed partial class PeoplePage
{
    private readonly Complaints wrong = new();
    private IReadOnlyList<Person> people = [];
    private PersonForm form = new();
    private bool adding;
    private bool busy;
    private int looked;
    private string refused = "";
    private string said = "";
    private string? passwordFor;
    private string password = "";
    private string? passwordWrong;

    [Inject]
    private PeopleBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    protected override async Task OnInitializedAsync() => people = await Book.ListAsync();

    private async Task AddAsync()
    {
        refused = "";
        if (busy || !wrong.Take(() => new PersonValidator().Validate(form)))
        {
            return;
        }

        var name = form.Name;
        var saved = await DoAsync(by => Book.AddAsync(form, by));
        refused = saved.Words;
        if (saved.Ok)
        {
            (form, adding) = (new PersonForm(), false);
            Snackbar.Add($"{name} can sign in now.");
        }
    }

    private async Task RoleAsync(Person person, string role)
    {
        if (role == person.Role)
        {
            return;
        }

        var saved = await DoAsync(by => Book.ChangeRoleAsync(person.Id, role, by));
        Tell(saved, $"{person.Name} is {role} from now on.", () => DoAsync(by => Book.ChangeRoleAsync(person.Id, person.Role, by)));
    }

    private async Task RetireAsync(Person person)
    {
        var saved = await DoAsync(by => Book.RetireAsync(person.Id, by));
        Tell(saved, $"{person.Name} is retired and cannot sign in.", () => DoAsync(by => Book.BringBackAsync(person.Id, by)));
    }

    private async Task BringBackAsync(Person person)
    {
        var saved = await DoAsync(by => Book.BringBackAsync(person.Id, by));
        Tell(saved, $"{person.Name} can sign in again.", () => DoAsync(by => Book.RetireAsync(person.Id, by)));
    }

    private void OpenPassword(Person person) => (passwordFor, password, passwordWrong) = (person.Id, "", null);

    private async Task PasswordAsync(Person person)
    {
        passwordWrong = PasswordRules.Wrong(password, new("", person.Name, person.Email));
        if (busy || passwordWrong is not null)
        {
            return;
        }

        var saved = await DoAsync(by => Book.SetPasswordAsync(person.Id, password, by));
        passwordWrong = saved.Ok ? null : saved.Words;
        if (saved.Ok)
        {
            (passwordFor, password) = (null, "");
            Snackbar.Add($"{person.Name} signs in with the new password.");
        }
    }

    private async Task<Saved> DoAsync(Func<string, Task<Saved>> act)
    {
        busy = true;
        var saved = await act(await Who.NameAsync());
        people = await Book.ListAsync();
        // a fresh field, so that a refused choice does not stay on show
        looked++;
        busy = false;
        return saved;
    }

    private void Tell(Saved saved, string words, Func<Task<Saved>> undo)
    {
        said = saved.Words;
        if (saved.Ok)
        {
            Snackbar.Add(words, configure: o =>
            {
                o.Action = "Undo";
                o.OnClick = _ => InvokeAsync(async () =>
                {
                    said = (await undo()).Words;
                    StateHasChanged();
                });
            });
        }
    }
}
