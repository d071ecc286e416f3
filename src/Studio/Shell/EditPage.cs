using FluentValidation;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Shell;

/// <summary>A form of the stores: what is being typed about one record.</summary>
public interface IEdited
{
    int Id { get; }

    string Name { get; }

    bool Retired { get; }
}

/// <summary>
/// A page that edits one record of the stores. What is typed is kept on the device until it is saved; every complaint is shown at once;
/// a refusal leaves the form as it stands.
/// </summary>
/// <typeparam name="TForm">The form's model.</typeparam>
public abstract class EditPage<TForm> : ComponentBase
    where TForm : class, IEdited, new()
{
    private Dictionary<string, string> wrong = new(StringComparer.Ordinal);
    private TForm? form;
    private string kept = "";
    private bool tried;

    [Parameter]
    public int Id { get; set; }

    [Inject]
    private IValidator<TForm> Validator { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    /// <summary>The form as typed so far; look at <see cref="Ready"/> first.</summary>
    public TForm Typed => form!;

    /// <summary>Number fields whose text cannot be read; cascaded to them.</summary>
    protected UnreadNumbers Unread { get; } = new();

    /// <summary>True once there is a form.</summary>
    protected bool Ready => form is not null;

    /// <summary>True when there is no record of that number.</summary>
    protected bool Missing { get; private set; }

    protected bool Saving { get; private set; }

    /// <summary>True when somebody else saved a newer version meanwhile.</summary>
    protected bool Stale { get; private set; }

    /// <summary>Why nothing was kept; empty when there is no reason.</summary>
    protected string Refused { get; private set; } = "";

    /// <summary>What was typed earlier and not kept.</summary>
    protected TForm? Draft { get; private set; }

    protected string Units { get; private set; } = "metric";

    protected string Currency { get; private set; } = "GBP";

    protected string Title => form is { Id: > 0, Name.Length: > 0 } ? form.Name : $"A new {Thing}";

    /// <summary>What it is called in a sentence: resin, material, mould.</summary>
    protected abstract string Thing { get; }

    /// <summary>Address of the ledger.</summary>
    protected abstract string Ledger { get; }

    private string DraftKey => $"{Thing}:{Id}";

    /// <summary>What is wrong with a field, or null.</summary>
    public string? Wrong(string path) => wrong.GetValueOrDefault(path);

    /// <summary>Draws the page again after a part of it changed the form.</summary>
    public void Redraw() => StateHasChanged();

    protected abstract Task<TForm?> FetchAsync(int id);

    protected abstract Task<Saved> KeepAsync(TForm form, string by);

    protected abstract Task<Saved> TurnAsync(int id, bool retired, string by);

    /// <summary>Anything else the page shows of the record.</summary>
    protected virtual Task BesidesAsync(int id) => Task.CompletedTask;

    // once a save was refused, a mended field loses its complaint at once
    protected override bool ShouldRender()
    {
        wrong = tried && form is not null ? Complaints(form) : wrong;
        return true;
    }

    protected override async Task OnParametersSetAsync()
    {
        var settings = await Settings.ReadAsync();
        (Units, Currency) = (settings.Units, settings.Currency);
        if (form is null || form.Id != Id)
        {
            await LoadAsync();
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            await FindDraftAsync();
        }
        else if (form is not null && !Saving && Draft is null && JsonColumn.Write(form) is var now && now != kept)
        {
            kept = now;
            await Script.KeepDraftTextAsync(DraftKey, now);
        }
    }

    protected void TakeDraft() => (form, Draft, kept) = (Draft, null, "");

    protected async Task DropDraftAsync()
    {
        Draft = null;
        await Script.DropDraftAsync(DraftKey);
    }

    /// <summary>Lets go of what was typed and shows what is stored now.</summary>
    protected async Task ReloadAsync()
    {
        await DropDraftAsync();
        await LoadAsync();
        Unread.PutBack();
    }

    protected async Task SaveAsync()
    {
        if (Saving)
        {
            return;
        }

        if (!Check())
        {
            StateHasChanged();
            await Task.Yield(); // the sentence is drawn first, then it takes the focus
            await Script.InvokeVoidAsync("studio.focus", "#refused");
            return;
        }

        Saving = true;
        var saved = await KeepAsync(Typed, await Who.NameAsync());
        Saving = false;
        if (!saved.Ok)
        {
            (Refused, Stale) = (saved.Words, saved.IsStale);
            return;
        }

        kept = JsonColumn.Write(form);
        await DropDraftAsync();
        Snackbar.Add($"{Typed.Name} is kept.", MudBlazor.Severity.Normal);
        Nav.NavigateTo(Ledger);
    }

    protected async Task TurnAsync()
    {
        var (id, name, retired, by) = (Id, Typed.Name, Typed.Retired, await Who.NameAsync());
        var saved = await TurnAsync(id, !retired, by);
        if (!saved.Ok)
        {
            Refused = saved.Words;
            return;
        }

        Snackbar.Add(retired ? $"{name} is back in the stores." : $"{name} is retired. What uses it keeps it.", MudBlazor.Severity.Normal, o =>
        {
            o.Action = "Undo";
            o.OnClick = _ => TurnAsync(id, retired, by);
        });
        Nav.NavigateTo(Ledger);
    }

    private async Task LoadAsync()
    {
        form = Id == 0 ? new TForm() : await FetchAsync(Id);
        Missing = form is null;
        if (Id > 0 && !Missing)
        {
            await BesidesAsync(Id);
        }

        kept = JsonColumn.Write(form);
        (wrong, tried, Refused, Stale) = (new(StringComparer.Ordinal), false, "", false);
    }

    private async Task FindDraftAsync()
    {
        var json = await Script.DraftTextAsync(DraftKey);
        if (string.IsNullOrEmpty(json) || json == kept)
        {
            return;
        }

        try
        {
            Draft = JsonColumn.Read<TForm>(json);
            StateHasChanged();
        }
        catch (System.Text.Json.JsonException)
        {
            // written by another version of the program: it cannot be read, so it is put away
            await DropDraftAsync();
        }
    }

    private Dictionary<string, string> Complaints(TForm typed) =>
        Validator.Validate(typed).Errors.GroupBy(e => e.PropertyName, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().ErrorMessage, StringComparer.Ordinal);

    private bool Check()
    {
        (wrong, tried, Stale) = (Complaints(Typed), true, false);
        Refused = (wrong.Count, Unread.Any) switch
        {
            (0, false) => "",
            (0, true) => "Nothing was kept yet. " + string.Join(" ", Unread.Sentences),
            (1, _) => "Nothing was kept yet: one field needs a look. It is marked below.",
            _ => $"Nothing was kept yet: {wrong.Count} fields need a look. They are marked below.",
        };
        return Refused.Length == 0;
    }
}
