using Microsoft.AspNetCore.Components;
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
        CustodyLink.Moved => $"Move it from {View.Now.Place}",
        CustodyLink.Weighed => "Weigh it",
        CustodyLink.Prepared => "Prepared for resin",
        CustodyLink.Copied => "A copy was made",
        CustodyLink.Embedded => "Cast into a piece",
        CustodyLink.CopyCast => "The copy was cast",
        CustodyLink.Returned => View.Now.InHand ? "It goes back to the family" : "It goes home in its piece",
        _ => "Add a note",
    };

    protected override void OnInitialized() => form = new ActForm
    {
        Act = Act,
        LeftOver = Act == CustodyLink.Embedded && View.Keepsake.Permits == Permission.EmbedPart,
        Whither = Act == CustodyLink.Returned ? (View.Keepsake.DepositorName.Length > 0 ? View.Keepsake.DepositorName : View.Customer) : "",
    };

    private string? Wrong(string field) => wrong.On(field);

    private async Task SaveAsync()
    {
        if (saving)
        {
            return;
        }

        saving = true;
        trouble = "";
        if (wrong.Take(new ActValidator().Validate(form)))
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
