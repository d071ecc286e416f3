using System.Text.Json;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Engine.Time;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Story;

/// <summary>Noting an enquiry; half-typed ones stay on the device.</summary>
public sealed partial class EnquiryPage
{
    private const string DraftKey = "enquiry";
    private const int MostKnown = 5;

    private readonly Complaints wrong = new();
    private EnquiryForm form = new();
    private IReadOnlyList<CustomerLine> known = [];
    private string knownHow = "";
    private string refused = "";
    private string drafted = JsonSerializer.Serialize(new EnquiryForm());
    private bool restored;
    private bool saving;
    private bool ready;
    private TimeResult? time;
    private (DateOnly? Day, string Handover)? asked;
    private DateOnly today;

    /// <summary>A customer to begin with, from their page.</summary>
    [SupplyParameterFromQuery]
    private int? Customer { get; set; }

    [Inject]
    private CommissionBook Book { get; set; } = default!;

    [Inject]
    private PieceTimeBook Times { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private CustomerBook Customers { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    protected override async Task OnInitializedAsync()
    {
        today = DateOnly.FromDateTime(Say.Local(Clock.GetUtcNow().UtcDateTime, await Settings.ZoneAsync()));
        if (Customer is { } id && await Customers.ReadAsync(id) is { } chosen)
        {
            Choose(new CustomerLine(chosen.Id, chosen.Name, chosen.Email, chosen.Phone));
        }
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            if (await Script.DraftAsync<EnquiryForm>(DraftKey) is { } draft)
            {
                (form, restored) = (draft, true);
                StateHasChanged();
            }

            ready = true;
        }

        // what a typical piece needs changes with the day and with how it goes home, and with nothing else of the form
        if (asked != (form.NeededBy, form.Handover))
        {
            asked = (form.NeededBy, form.Handover);
            time = await Times.OfTypicalAsync(form.NeededBy, form.Handover == Handovers.Delivery);
            StateHasChanged();
        }
        if (!firstRender && ready && !saving && JsonSerializer.Serialize(form) is var now && now != drafted)
        {
            drafted = now;
            await Script.KeepDraftAsync(DraftKey, form);
        }
    }

    private static string How(CustomerLine customer) => string.Join(", ", new[] { customer.Email, customer.Phone }.Where(s => s.Length > 0));

    private async Task TypeNameAsync(string typed)
    {
        (form.CustomerName, form.CustomerId) = (typed, null);
        var found = await Book.KnownAsync(typed, MostKnown);
        if (form.CustomerName == typed && form.CustomerId is null)
        {
            known = found;
        }
    }

    private void Choose(CustomerLine customer)
    {
        (form.CustomerId, form.CustomerName) = (customer.Id, customer.Name);
        (form.Email, form.Phone, known, knownHow) = ("", "", [], How(customer));
    }

    private void SomeoneElse() => form.CustomerId = null;

    private async Task AfreshAsync()
    {
        (form, restored, known, refused) = (new EnquiryForm(), false, [], "");
        wrong.Clear();
        drafted = JsonSerializer.Serialize(form);
        await Script.DropDraftAsync(DraftKey);
    }

    private async Task SaveAsync()
    {
        refused = "";
        if (saving || !wrong.Take(() => new EnquiryValidator(Clock).Validate(form)))
        {
            return;
        }

        saving = true;
        var saved = await Book.CreateAsync(form, await Who.NameAsync());
        if (!saved.Ok)
        {
            (refused, saving) = (saved.Words, false);
            return;
        }

        await Script.DropDraftAsync(DraftKey);
        Nav.NavigateTo($"/commissions/{saved.Id}");
    }
}
