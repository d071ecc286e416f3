using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Papers;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>A commission's keepsakes with their receipt and labels: where the intake ends.</summary>
public sealed partial class ReceiptsPage
{
    private readonly SortedSet<int> chosen = [];
    private HashSet<int> fresh = [];
    private IReadOnlyList<LedgerLine> lines = [];
    private IntakeFor? about;
    private ReceiptMail? mail;
    private LabelGrid grid = LabelGrid.A4ThreeByEight;
    private IReadOnlyList<IssuedPaper> given = [];
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private bool loaded;
    private int from = 1;

    [Parameter]
    public int CommissionId { get; set; }

    /// <summary>Ids of those just taken in, which are ticked; none ticks all.</summary>
    [SupplyParameterFromQuery]
    private string? New { get; set; }

    [Inject]
    private KeepsakeBook Book { get; set; } = default!;

    [Inject]
    private KeepsakePaperBook Papers { get; set; } = default!;

    [Inject]
    private IssuedBook Issued { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    private string Only => chosen.Count == lines.Count ? "" : "only=" + string.Join(',', chosen.Select(id => id.ToString(CultureInfo.InvariantCulture)));

    private string ReceiptHref => string.Create(CultureInfo.InvariantCulture, $"/papers/receipt/{CommissionId}.pdf?{Only}");

    private string LabelsHref => string.Create(CultureInfo.InvariantCulture, $"/papers/labels/{CommissionId}.pdf?from={from}&{Only}");

    protected override async Task OnParametersSetAsync()
    {
        about = await Book.IntakeForAsync(CommissionId);
        lines = await Book.ForCommissionAsync(CommissionId);
        grid = await Papers.GridAsync();
        fresh = [.. (New ?? "").Split(',').Select(t => int.TryParse(t, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : 0)];
        chosen.Clear();
        chosen.UnionWith(lines.Where(Fresh).Select(k => k.Id));
        if (chosen.Count == 0)
        {
            chosen.UnionWith(lines.Select(k => k.Id));
        }

        given = [.. (await Issued.OfCommissionAsync(CommissionId)).Where(p => p.Kind != PaperKinds.Quote)];
        zone = await Settings.ZoneAsync();
        await WriteMailAsync();
        loaded = true;
    }

    private string When(DateTime at) => Say.When(at, zone, Clock.GetUtcNow().UtcDateTime);

    private bool Fresh(LedgerLine k) => fresh.Contains(k.Id);

    private async Task Choose(int id, bool on)
    {
        _ = on ? chosen.Add(id) : chosen.Remove(id);
        await WriteMailAsync();
    }

    private async Task WriteMailAsync() => mail = chosen.Count == 0 ? null : await Papers.MailAsync(CommissionId, chosen);
}
