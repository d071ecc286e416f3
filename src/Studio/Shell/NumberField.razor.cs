using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Studio.Shell;

/// <summary>A number with its unit, typed as people type: "150", "150 mm", "6 in", "1,5".</summary>
public partial class NumberField
{
    private string text = "";
    private string? wrong;
    private double? shown;

    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>The unit the value is kept in: mm, g, ml, h, min, %, g/ml, °C or empty.</summary>
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

    /// <summary>True when what is typed cannot be used.</summary>
    public bool Unreadable => wrong is not null;

    private bool Inches => Units == "inch" && Unit == "mm";

    private string ShownUnit => Inches ? "in" : Unit;

    private string FullLabel => ShownUnit.Length == 0 ? Label : $"{Label} [{ShownUnit}]";

    protected override void OnParametersSet()
    {
        // a value set from outside replaces the text; one that the text itself gave does not, so "150." stays as typed
        if (!Nullable.Equals(Value, shown) || (text.Length == 0 && Value is not null))
        {
            shown = Value;
            wrong = null;
            text = Value is { } v ? (Inches ? v / 25.4 : v).ToString("0.####", CultureInfo.InvariantCulture) : "";
        }
    }

    private async Task TakeAsync(string typed)
    {
        text = typed ?? "";
        var (value, complaint) = Quantity.Read(text, Unit, ShownUnit);
        if (complaint is null && value is { } v && (v < Min || v > Max))
        {
            complaint = Range();
        }

        wrong = complaint;
        await Readable.InvokeAsync(wrong is null);
        if (wrong is null)
        {
            shown = value;
            await ValueChanged.InvokeAsync(value);
        }
    }

    private string Range() => (Min, Max) switch
    {
        ({ } a, { } b) => string.Create(CultureInfo.InvariantCulture, $"Must be between {a:0.##} and {b:0.##} {Unit}.").Replace(" .", ".", StringComparison.Ordinal),
        ({ } a, null) => string.Create(CultureInfo.InvariantCulture, $"Must be at least {a:0.##} {Unit}.").Replace(" .", ".", StringComparison.Ordinal),
        (null, { } b) => string.Create(CultureInfo.InvariantCulture, $"Must be at most {b:0.##} {Unit}.").Replace(" .", ".", StringComparison.Ordinal),
        _ => "",
    };
}
