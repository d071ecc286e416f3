using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Commissions;
using Studio.Data;
using Studio.Steps;

namespace Studio.Story;

/// <summary>One commission's whole story, redrawn whenever anybody changes a part of it.</summary>
public sealed partial class CommissionPage : IDisposable
{
    private CommissionStory? story;
    private StepView? steps;
    private bool loaded;
    private bool editing;
    private bool editingCustomer;
    private int shown;
    private IDisposable? ear;

    [Parameter]
    public int Id { get; set; }

    [Inject]
    private StoryBook Book { get; set; } = default!;

    [Inject]
    private StepBook Steps { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    private bool Open => story is { } s && !Standing.Ends(s.Commission.Stands);

    public void Dispose() => ear?.Dispose();

    protected override void OnInitialized() => ear = News.Listen(n =>
    {
        if (n.Topic is not (News.Room or News.Stores))
        {
            _ = InvokeAsync(async () =>
            {
                await LoadAsync();
                StateHasChanged();
            });
        }
    });

    protected override async Task OnParametersSetAsync()
    {
        if (shown != Id)
        {
            (shown, editing, editingCustomer) = (Id, false, false);
            await LoadAsync();
        }
    }

    private static string Dial(string phone) => string.Concat(phone.Where(c => char.IsAsciiDigit(c) || c == '+'));

    private async Task LoadAsync()
    {
        story = await Book.ReadAsync(Id);
        steps = await Steps.ReadAsync(Id);
        loaded = true;
    }

    private async Task KeptAsync()
    {
        editing = false;
        Snackbar.Add("The changes are kept.");
        await LoadAsync();
    }

    private async Task CustomerKeptAsync()
    {
        editingCustomer = false;
        Snackbar.Add("The customer is kept.");
        await LoadAsync();
    }
}
