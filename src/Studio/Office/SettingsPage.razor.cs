using System.Globalization;
using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Engine.Price;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Office;

/// <summary>The studio's own figures, for the owner.</summary>
public sealed partial class SettingsPage
{
    private static readonly Dictionary<string, string> Names = CurrencyNames();

    private readonly Complaints wrong = new();
    private readonly Clash<StudioSettings> clash = new(Labels);
    private readonly UnreadNumbers unread = new();
    private readonly HashSet<string> blank = new(StringComparer.Ordinal);
    private StudioSettings? form;
    private string refused = "";
    private bool saving;

    [Inject]
    private SettingsBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    private static IReadOnlyDictionary<string, string> Labels { get; } = new[]
    {
        (nameof(StudioSettings.StudioName), "Name of the studio"), (nameof(StudioSettings.Email), "E-mail"), (nameof(StudioSettings.Phone), "Telephone"), (nameof(StudioSettings.Address), "Address"),
        (nameof(StudioSettings.TimeZone), "Time zone"), (nameof(StudioSettings.Currency), "Currency"), (nameof(StudioSettings.Units), "Lengths"), (nameof(StudioSettings.Paper), "Paper"),
        (nameof(StudioSettings.TaxName), "Name of the tax"), (nameof(StudioSettings.PublicUrl), "Address for phones"), (nameof(StudioSettings.Places), "Places"),
        (nameof(StudioSettings.WorkDays), "Working days"), (nameof(StudioSettings.WorkFrom), "From"), (nameof(StudioSettings.WorkUntil), "Until"), (nameof(StudioSettings.DaysOff), "Days off"), (nameof(StudioSettings.UsualRoomC), "Usual temperature of the room"),
    }.Concat(Figure.All.Select(f => (f.Key, f.Label))).ToDictionary(p => p.Item1, p => p.Item2, StringComparer.Ordinal);

    protected override Task OnInitializedAsync() => LoadAsync();

    private static Task<IEnumerable<string>> Zones(string? typed, CancellationToken cancel) =>
        Task.FromResult(TimeZoneInfo.GetSystemTimeZones().Select(z => z.Id).Where(id => Has(id.Replace('_', ' '), typed) || Has(id, typed)));

    private static Task<IEnumerable<string>> Money(string? typed, CancellationToken cancel) =>
        Task.FromResult(Currencies.Codes.Order(StringComparer.Ordinal).Where(code => Has(MoneyName(code), typed)));

    private static bool Has(string text, string? typed) => string.IsNullOrWhiteSpace(typed) || text.Contains(typed.Trim(), StringComparison.OrdinalIgnoreCase);

    private static string MoneyName(string? code) => code is not null && Names.TryGetValue(code, out var name) ? $"{code}, {name}" : code ?? "";

    // names come from the machine's own culture data; a code without one is shown bare
    private static Dictionary<string, string> CurrencyNames() => CultureInfo.GetCultures(CultureTypes.SpecificCultures)
        .Select(c => new RegionInfo(c.Name))
        .GroupBy(r => r.ISOCurrencySymbol, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.First().CurrencyEnglishName, StringComparer.Ordinal);

    private static string UnitOf(Figure figure) => figure.Unit is "money" or "days" ? "" : figure.Unit;

    private string LabelOf(Figure figure) => figure.Unit switch
    {
        "money" => $"{figure.Label} [{form!.Currency}]",
        "days" => $"{figure.Label} [days]",
        _ => figure.Label,
    };

    private double? Shown(Figure figure) => blank.Contains(figure.Key) ? null : figure.Number(form!);

    private void Take(Figure figure, double? value)
    {
        blank.Remove(figure.Key);
        if (value is { } number)
        {
            figure.Write(form!, number);
        }
        else
        {
            blank.Add(figure.Key);
        }
    }

    private async Task LoadAsync()
    {
        form = await Book.ReadAsync();
        clash.Begin(await Book.ReadAsync());
        refused = "";
        blank.Clear();
        unread.PutBack();
        wrong.Clear();
    }

    private bool Check()
    {
        form!.Places = [.. form.Places.Select(p => p.Trim()).Where(p => p.Length > 0)];
        form.StudioName = form.StudioName.Trim();
        form.PublicUrl = form.PublicUrl.Trim().TrimEnd('/');
        form.Email = form.Email.Trim();
        return wrong.Take(() => new SettingsValidator().Validate(form), () => Figure.All.Where(f => blank.Contains(f.Key)).Select(f => KeyValuePair.Create(f.Key, f.Range)));
    }

    private async Task SaveAsync()
    {
        refused = "";
        if (saving || !Check())
        {
            return;
        }

        saving = true;
        var saved = await Book.SaveAsync(form!, await Who.NameAsync());
        saving = false;
        if (saved.Ok)
        {
            await LoadAsync();
            Snackbar.Add("The settings are kept.");
            return;
        }

        refused = saved.Words;
        if (saved.IsStale)
        {
            clash.Meet(form!, await Book.ReadAsync());
        }
    }
}
