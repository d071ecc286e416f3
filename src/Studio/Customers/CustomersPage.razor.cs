using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;

namespace Studio.Customers;

/// <summary>The customers' ledger.</summary>
public sealed partial class CustomersPage : IDisposable
{
    private const int Step = 50;

    private CustomerList? list;
    private int take = Step;
    private int? open;
    private IDisposable? ear;

    [SupplyParameterFromQuery]
    private string? Find { get; set; }

    [SupplyParameterFromQuery]
    private int? Edit { get; set; }

    [Inject]
    private CustomerBook Book { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    public void Dispose() => ear?.Dispose();

    protected override async Task OnInitializedAsync()
    {
        open = Edit;
        await LoadAsync();
        ear = News.Listen(n =>
        {
            if (n.Topic == News.Commission)
            {
                _ = InvokeAsync(async () =>
                {
                    await LoadAsync();
                    StateHasChanged();
                });
            }
        });
    }

    private static string Commissions(CustomerLine customer) => "/commissions?show=all&find=" + Uri.EscapeDataString(customer.Name);

    private async Task LoadAsync() => list = await Book.ListAsync(Find ?? "", take);

    private async Task SearchAsync(string typed)
    {
        (Find, take) = (typed, Step);
        await LoadAsync();
    }

    private async Task MoreAsync()
    {
        take += Step;
        await LoadAsync();
    }

    private void Open(int? id) => open = id;

    private async Task KeptAsync(int id)
    {
        open = null;
        Snackbar.Add("The customer is kept.");
        await LoadAsync();
    }
}
