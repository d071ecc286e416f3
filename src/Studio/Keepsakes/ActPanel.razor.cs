using Microsoft.AspNetCore.Components;
using Studio.Engine.Custody;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Keepsakes;

/// <summary>One act on a keepsake.</summary>
public sealed partial class ActPanel
{
    private readonly Complaints wrong = new();
    private ActForm form = new();
    private bool saving;
    private string trouble = "";

    [Parameter, EditorRequired]
    public KeepsakeView View { get; set; } = default!;

    [Parameter, EditorRequired]
    public string Act { get; set; } = "";

    [Parameter]
    public IReadOnlyList<string> Places { get; set; } = [];

    /// <summary>Called after the save, with what to say about it.</summary>
    [Parameter]
    public EventCallback<string> OnSaved { get; set; }

    [Parameter]
    public EventCallback OnLeave { get; set; }

    [Inject]
    private KeepsakeBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    private string Title => Act switch
    {
        CustodyKind.Moved => View.Now.Place.Length > 0 ? $"Move it from {View.Now.Place}" : "Move it",
        CustodyKind.Weighed => "Weigh it",
        CustodyKind.Prepared => "Prepared for resin",
        CustodyKind.Divided => "It was divided",
        CustodyKind.Copied => "A copy was made",
        CustodyKind.SetIn => "Set into a piece",
        CustodyKind.CopySetIn => "The copy was set into a piece",
        CustodyKind.Returned => "It goes back to the family",
        CustodyKind.Used => "Used up in a test",
        CustodyKind.Lost => "It is lost",
        CustodyKind.Note => "Add a note",
        var unknown => throw new InvalidOperationException($"There is no panel for the act '{unknown}'."),
    };

    private string WordsLabel => Act switch
    {
        CustodyKind.Moved => "Why it is moved",
        CustodyKind.Copied => "What was copied, and how",
        CustodyKind.Prepared => "What was done to it",
        CustodyKind.Divided => "How it was divided",
        CustodyKind.Used => "Which test",
        CustodyKind.Lost => "How it was lost, and who was told",
        _ => "Note",
    };

    private bool WordsOptional => Act is CustodyKind.Weighed or CustodyKind.SetIn or CustodyKind.CopySetIn or CustodyKind.Returned;

    protected override void OnInitialized() => form = new ActForm
    {
        Act = Act,
        All = Act == CustodyKind.Returned || (Act == CustodyKind.SetIn && View.Permission.MayCast == CastShare.All),
        Whom = Act == CustodyKind.Returned ? (View.Keepsake.DepositorName.Length > 0 ? View.Keepsake.DepositorName : View.Customer) : "",
    };

    private string? Wrong(string field) => wrong.On(field);

    private bool Check() => wrong.Take(() => new ActValidator().Validate(form));

    private async Task SaveAsync()
    {
        if (saving)
        {
            return;
        }

        saving = true;
        trouble = "";
        if (Check())
        {
            var saved = await Book.DoAsync(View.Keepsake.Id, View.Keepsake.Version, form, await Who.NameAsync());
            trouble = saved.Words;
            if (saved.Ok)
            {
                await OnSaved.InvokeAsync("Written down.");
            }
        }

        saving = false;
    }
}
