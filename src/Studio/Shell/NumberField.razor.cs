using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Studio.Shell;

/// <summary>A number with its unit, typed as people type: "150", "150 mm", "6 in", "1,5". What cannot be read stays as typed.</summary>
public sealed partial class NumberField : IDisposable
{
    private const double MmPerInch = 25.4;

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

    /// <summary>Told whether what stands in the field can be used.</summary>
    [Parameter]
    public EventCallback<bool> Readable { get; set; }

    /// <summary>A complaint from outside (a finding on this field).</summary>
    [Parameter]
    public string? Wrong { get; set; }

    [Parameter]
    public string? Helper { get; set; }

    [Parameter]
    public double? Min { get; set; }

    [Parameter]
    public double? Max { get; set; }

    [Parameter]
    public bool Immediate { get; set; }

    [Parameter]
    public bool Disabled { get; set; }

    [Parameter]
    public bool Required { get; set; }

    [Parameter]
    public Dictionary<string, object?> Extra { get; set; } = [];

    /// <summary>The form's gatherer of unreadable fields, where it has one.</summary>
    [CascadingParameter]
    public UnreadNumbers? Unread { get; set; }

    /// <summary>True when what is typed cannot be used.</summary>
    public bool Unreadable => wrong is not null;

    private bool Inches => Units == "inch" && Unit == "mm";

    private string ShownUnit => Inches ? "in" : Unit;

    private string FullLabel => ShownUnit.Length == 0 ? Label : $"{Label} [{ShownUnit}]";

    public void Dispose() => Unread?.Note(this, unread: false);

    protected override void OnParametersSet()
    {
        // a value set from outside replaces the text; one that the text itself gave does not, so "150." stays as typed,
        // and a text that cannot be read stays until somebody mends it
        if (!Nullable.Equals(Value, shown) || (text.Length == 0 && Value is not null))
        {
            (shown, text) = (Value, Value is { } v ? Shown(v) : "");
            Complain(null);
        }
    }

    private async Task TakeAsync(string typed)
    {
        text = typed ?? "";
        var (value, complaint) = Quantity.Read(text, Unit, ShownUnit);
        Complain(complaint ?? (value is { } v && (v < Min || v > Max) ? Range() : null));
        await Readable.InvokeAsync(wrong is null);
        if (wrong is null)
        {
            shown = value;
            await ValueChanged.InvokeAsync(value);
        }
    }

    private void Complain(string? complaint)
    {
        wrong = complaint;
        Unread?.Note(this, wrong is not null);
    }

    private string Range() => (Min, Max) switch
    {
        ({ } a, { } b) => $"Must be between {Shown(a)} and {Shown(b)} {ShownUnit}".TrimEnd() + ".",
        ({ } a, null) => $"Must be at least {Shown(a)} {ShownUnit}".TrimEnd() + ".",
        (null, { } b) => $"Must be at most {Shown(b)} {ShownUnit}".TrimEnd() + ".",
        _ => "",
    };

    private string Shown(double value) => Inches ? (value / MmPerInch).ToString("0.####", CultureInfo.InvariantCulture) : value.ToString("0.######", CultureInfo.InvariantCulture);
}
