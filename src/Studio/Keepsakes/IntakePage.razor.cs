using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Engine.Custody;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Keepsakes;

/// <summary>Taking in keepsakes at a kitchen table: several in a row, each with its number shown large.</summary>
public sealed partial class IntakePage : IAsyncDisposable
{
    private static readonly IReadOnlyList<Choice> Ratings = [.. ConditionWords.Overall.Select(w => new Choice(w, w))];
    private static readonly IReadOnlyList<Choice> Methods = [new("by hand", "By hand"), new("by post", "By post"), new("fetched by us", "Fetched by us")];
    private static readonly Dictionary<string, object?> CountName = new(StringComparer.Ordinal) { ["name"] = "count" };
    private static readonly Dictionary<string, object?> MassName = new(StringComparer.Ordinal) { ["name"] = "massG" };

    private readonly List<Kept> kept = [];
    private readonly UnreadNumbers unread = new();
    private readonly Dictionary<string, string> wrong = new(StringComparer.OrdinalIgnoreCase);
    private ElementReference formElement;
    private PhotoTray? tray;
    private IJSObjectReference? module;
    private IJSObjectReference? words;
    private IntakeFor? about;
    private IntakeForm form = new();
    private bool loaded;
    private bool attached;
    private bool changed;
    private bool restored;
    private bool saving;
    private bool again;
    private bool pointAtWrong;
    private bool owner;
    private int lost;
    private string trouble = "";

    /// <summary>One that was kept in this visit.</summary>
    private sealed record Kept(int Id, string Number, string Spoken);

    [Parameter]
    public int CommissionId { get; set; }

    [Inject]
    private KeepsakeBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    private string WordsKey => "intake-" + CommissionId.ToString(CultureInfo.InvariantCulture);

    private string PhotoKey => WordsKey + "-photos";

    private bool MoreWrong => wrong.Keys.Any(k => k is "DepositorName" or "DepositorAuthority" or "Requirements" or "Packing" or "ReturnBy");

    private string PapersHref => $"/commissions/{CommissionId.ToString(CultureInfo.InvariantCulture)}/keepsakes?new={string.Join(',', kept.Select(k => k.Id.ToString(CultureInfo.InvariantCulture)))}";

    public async ValueTask DisposeAsync()
    {
        await Scripts.LetGoAsync(words, "dispose", module);
    }

    protected override async Task OnInitializedAsync()
    {
        about = await Book.IntakeForAsync(CommissionId);
        owner = await Who.IsOwnerAsync();
        loaded = true;
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (about is not null && !attached)
        {
            attached = true;
            module = await Script.InvokeAsync<IJSObjectReference>("import", "/intake.js");
            await RestoreAsync();
            words = await module.InvokeAsync<IJSObjectReference>("words", formElement, WordsKey);
        }
        else if (changed && words is not null)
        {
            changed = false;
            await words.InvokeVoidAsync("keep");
        }

        if (pointAtWrong && module is not null)
        {
            pointAtWrong = false;
            await module.InvokeVoidAsync("firstWrong");
        }
    }

    private string? Wrong(string field) => wrong.GetValueOrDefault(field);

    private void Set(Action change)
    {
        change();
        changed = true;
    }

    // what is typed or chosen is no longer what was carried
    private IEnumerable<string> CarriedWords => form.Carried.Where(f => f != nameof(form.Place)).Select(f => f switch
    {
        nameof(form.Method) => "how it came",
        nameof(form.DepositorName) => "who brought it",
        nameof(form.DepositorAuthority) => "by what right",
        nameof(form.Packing) => "packing",
        nameof(form.ReturnBy) => "day of return",
        var unknown => unknown,
    });

    private string Label(string label, string field) => form.Carried.Contains(field, StringComparer.Ordinal) ? label + ", as with the one before" : label;

    // a draft whose keepsake was kept after all (the answer got lost) must not become a second one
    private async Task RestoreAsync()
    {
        var draft = await module!.InvokeAsync<Dictionary<string, string[]>?>("draft", WordsKey);
        if (draft is null)
        {
            return;
        }

        var typed = new IntakeForm();
        typed.Take(draft);
        if (await Book.NumberOfAsync(typed.SubmitKey) is { } number)
        {
            again = true;
            Remember(0, number);
            await DropDraftAsync();
        }
        else
        {
            (form, restored) = (typed, true);
        }

        StateHasChanged();
    }

    private async Task StartAfreshAsync()
    {
        (form, restored) = (new IntakeForm(), false);
        wrong.Clear();
        await DropDraftAsync();
    }

    private async Task DropDraftAsync()
    {
        await Script.DropDraftAsync(WordsKey);
        if (tray is not null)
        {
            await tray.ClearAsync();
        }
    }

    private async Task KeepAsync(bool next)
    {
        if (saving || words is null || tray is null)
        {
            return;
        }

        saving = true;
        try
        {
            var unreadable = unread.Refuse();
            var filled = await FilledInAsync() && !unreadable;
            if (!unreadable && !next && kept.Count > 0 && form.Blank && (await tray.SettleAsync()).Ids.Count == 0)
            {
                // the last one was kept with "log the next", and there is no next
                await DropDraftAsync();
                Nav.NavigateTo(PapersHref);
            }
            else if (filled)
            {
                await SaveAsync(next);
            }
            else
            {
                pointAtWrong = true;
            }
        }
        catch (Exception e) when (e is JSException or TaskCanceledException)
        {
            trouble = "The photographs are still on their way. Nothing is lost: wait for them, or take off those that will not go, and keep it again.";
        }
        finally
        {
            saving = false;
        }
    }

    // the browser's fields are read once more: a lost connection may have swallowed what was typed
    private async Task<bool> FilledInAsync()
    {
        (trouble, lost) = ("", 0);
        wrong.Clear();
        foreach (var (field, complaint) in form.Take(await words!.InvokeAsync<Dictionary<string, string[]>>("values")))
        {
            wrong[field] = complaint;
        }

        foreach (var failure in new IntakeValidator().Validate(form).Errors)
        {
            wrong.TryAdd(failure.PropertyName, failure.ErrorMessage);
        }

        return wrong.Count == 0;
    }

    private async Task SaveAsync(bool next)
    {
        (var ids, lost) = await tray!.SettleAsync();
        form.PhotoIds = [.. ids];
        var taken = await Book.TakeInAsync(CommissionId, form, await Who.NameAsync(), await Who.IsOwnerAsync());
        if (!taken.Ok)
        {
            trouble = taken.Words;
            return;
        }

        (again, restored) = (taken.Again, false);
        Remember(taken.Id, taken.EntryNumber);
        await DropDraftAsync();
        if (!next)
        {
            Nav.NavigateTo(PapersHref);
            return;
        }

        form = form.Next();
        StateHasChanged();
        await module!.InvokeVoidAsync("top", "#intake-top");
    }

    private void Remember(int id, string number) =>
        kept.Insert(0, new Kept(id, number, EntryNumber.TryParse(number, out var entry) ? SpokenAlphabet.Words(entry) : ""));
}
