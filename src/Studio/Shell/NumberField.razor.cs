using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Studio.Shell;

/// <summary>A number with its unit, typed as people type: "150", "150 mm", "6 in", "1,5". What cannot be read stays as typed.</summary>
public sealed partial class NumberField : IReadField, IDisposable
{
    private const double MmPerInch = 25.4;
    private static readonly string[] BelowZero = ["°C", "°", "K"];

    private string text = "";
    private string? wrong;
    private double? shown;

    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>The unit the value is kept in: mm, g, ml, h, min, %, g/ml, °C, an ISO 4217 code or empty.</summary>
    [Parameter]
    public string Unit { get; set; } = "";

    /// <summary><c>inch</c> shows a length in inches; the value stays in mm.</summary>
    [Parameter]
    public string Units { get; set; } = "metric";

    [Parameter]
    public double? Value { get; set; }

    [Parameter]
    public EventCallback<double?> ValueChanged { get; set; }

    /// <summary>A complaint from outside (a finding on this field).</summary>
    [Parameter]
    public string? Wrong { get; set; }

    [Parameter]
    public string? Helper { get; set; }

    /// <summary>The least it may be. Not said, it is nought, but for temperatures and angles: a length, a mass, a time or an amount is never less than nothing.</summary>
    [Parameter]
    public double? Min { get; set; }

    [Parameter]
    public double? Max { get; set; }

    /// <summary>True where only whole numbers make sense, such as a count.</summary>
    [Parameter]
    public bool Whole { get; set; }

    [Parameter]
    public bool Immediate { get; set; }

    [Parameter]
    public bool Disabled { get; set; }

    [Parameter]
    public bool Required { get; set; }

    [Parameter]
    public Dictionary<string, object?> Extra { get; set; } = [];

    /// <summary>The form's gatherer of unreadable fields; without one the field refuses to stand, because nothing would stop a save.</summary>
    [CascadingParameter]
    public UnreadNumbers? Unread { get; set; }

    string IReadField.Name => FullLabel;

    string IReadField.Typed => text;

    string? IReadField.Complaint => wrong;

    private double? Least => Min ?? (BelowZero.Contains(Unit, StringComparer.Ordinal) ? null : 0);

    private bool Inches => Units == "inch" && Unit == "mm";

    private string ShownUnit => Inches ? "in" : Unit;

    private string FullLabel => ShownUnit.Length == 0 ? Label : $"{Label} [{ShownUnit}]";

    public void Dispose() => Unread?.Note(this, readable: true);

    void IReadField.PutBack()
    {
        Show();
        StateHasChanged();
    }

    protected override void OnInitialized() => UnreadNumbers.Need(Unread, Label);

    protected override void OnParametersSet()
    {
        // a value set from outside replaces the text; one that the text itself gave does not, so "150." stays as typed,
        // and a text that cannot be read stays until somebody mends it
        if (!Nullable.Equals(Value, shown) || (text.Length == 0 && Value is not null))
        {
            Show();
        }
    }

    private void Show()
    {
        (shown, text) = (Value, Value is { } v ? Shown(v) : "");
        Complain(null);
    }

    private async Task TakeAsync(string typed)
    {
        text = typed ?? "";
        var (value, complaint) = Quantity.Read(text, Unit, ShownUnit);
        Complain(complaint ?? (value is { } v ? Misfit(v) : null));
        if (wrong is null)
        {
            shown = value;
            await ValueChanged.InvokeAsync(value);
        }
    }

    private void Complain(string? complaint)
    {
        wrong = complaint;
        Unread?.Note(this, wrong is null);
    }

    private string? Misfit(double value) =>
        value < Least || value > Max ? Range()
        : Whole && value != Math.Floor(value) ? "Must be a whole number."
        : null;

    private string Range() => (Least, Max) switch
    {
        ({ } a, { } b) => $"Must be between {Shown(a)} and {Shown(b)} {ShownUnit}".TrimEnd() + ".",
        ({ } a, null) => $"Must be at least {Shown(a)} {ShownUnit}".TrimEnd() + ".",
        (null, { } b) => $"Must be at most {Shown(b)} {ShownUnit}".TrimEnd() + ".",
        _ => "",
    };

    private string Shown(double value) => Inches ? (value / MmPerInch).ToString("0.####", CultureInfo.InvariantCulture) : value.ToString("0.######", CultureInfo.InvariantCulture);
}
