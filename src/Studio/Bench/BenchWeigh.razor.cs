using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Studio.Clock;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>Weighing one cup: what is in, what is missing, and what too much of a part asks of the other.</summary>
public sealed partial class BenchWeigh
{
    private string typed = "";
    private string wrong = "";
    private string chosen = "";

    [Parameter, EditorRequired]
    public BenchLayer Layer { get; set; } = default!;

    [Parameter, EditorRequired]
    public PourForm Form { get; set; } = default!;

    /// <summary>The cup, from 1.</summary>
    [Parameter]
    public int Batch { get; set; } = 1;

    [Parameter]
    public EventCallback<int> BatchChanged { get; set; }

    /// <summary>Told after every change, so that the tablet keeps a draft.</summary>
    [Parameter]
    public EventCallback Changed { get; set; }

    private Weighed Cup => Weighing.Of(Layer.Plan!.Batches[Batch - 1].PartAG, Layer.Plan.Batches[Batch - 1].PartBG, Form.Tally, Batch);

    // the part that the cup needs, unless the maker pointed at the other
    private string Part => chosen.Length > 0 ? chosen : Cup.Next.Length > 0 ? Cup.Next : "B";

    private List<ScaleReading> Own => Form.Tally.FindAll(r => r.Batch == Batch);

    private (double Goal, double Added, double Left) Figures(string part) => part == "A" ? (Cup.GoalAG, Cup.AddedAG, Cup.LeftAG) : (Cup.GoalBG, Cup.AddedBG, Cup.LeftBG);

    private string Checked(ScaleMode mode) => Form.Mode == mode ? "true" : "false";

    private static string Figure(double grams) => grams.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Off(double percent) => Math.Abs(percent) < 0.05 ? "is the sheet's" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(percent):0.0} % off the sheet's");

    private void Choose(string part) => chosen = part;

    private void Press(char key)
    {
        typed = typed.Length < 9 ? typed + key : typed;
        wrong = "";
    }

    private void Rub() => typed = typed.Length > 0 ? typed[..^1] : "";

    private Task ModeAsync(ScaleMode mode)
    {
        Form.Mode = mode;
        wrong = "";
        return Changed.InvokeAsync();
    }

    private Task KeyAsync(KeyboardEventArgs e) => e.Key == "Enter" ? AddAsync() : Task.CompletedTask;

    private async Task AddAsync()
    {
        var (value, complaint) = Quantity.Read(typed, "g");
        if (value is not { } figure)
        {
            wrong = complaint ?? "Type what the scale shows first.";
            return;
        }

        var (grams, no) = Weighing.Read(figure, Form.Mode, Form.Tally, Batch);
        wrong = no ?? "";
        if (grams is { } g)
        {
            Form.Tally.Add(new ScaleReading(Batch, Part, g));
            (typed, chosen) = ("", "");
            await Changed.InvokeAsync();
        }
    }

    private async Task TakeBackAsync()
    {
        Form.Tally.RemoveAt(Form.Tally.FindLastIndex(r => r.Batch == Batch));
        (wrong, chosen) = ("", "");
        await Changed.InvokeAsync();
    }
}
