using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Engine;
using Studio.Heat;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>The last look before a pour is kept.</summary>
public sealed partial class BenchStart
{
    private static readonly int[] Ago = [0, 5, 10, 20, 30];
    private static readonly Dictionary<string, object?> RoomId = new(StringComparer.Ordinal) { ["id"] = "pour-room" };

    private int ago;

    [Parameter, EditorRequired]
    public BenchView Sheet { get; set; } = default!;

    [Parameter, EditorRequired]
    public BenchLayer Layer { get; set; } = default!;

    [Parameter, EditorRequired]
    public PourForm Form { get; set; } = default!;

    /// <summary>What is foretold of its heat; null while it is worked out.</summary>
    [Parameter]
    public PourHeat? Heat { get; set; }

    [Parameter]
    public string Wrong { get; set; } = "";

    [Parameter]
    public EventCallback Changed { get; set; }

    private IReadOnlyList<Finding> Findings => BenchBook.Findings(Sheet, Layer, Form, Form.StartedAt ?? Sheet.Now, Heat);

    private bool NeedsReason => Findings.Any(f => f.Severity == Severity.Stop) && !Findings.Any(f => f.Severity == Severity.Stop && BenchBook.Final(f));

    private string RoomHelp => Sheet.Room is { } room
        ? $"Last read {Say.Celsius(room.Celsius)} {Say.When(room.At, Sheet.Zone, Sheet.Now)}; left empty, the clock goes by that."
        : "The clock starts from this; without any reading it cannot run.";

    private string Ratio => Weighing.OffPercent(Form.ActualAG, Form.ActualBG, Layer.Plan!.PartAG, Layer.Plan.PartBG) is { } off
        ? string.Create(CultureInfo.InvariantCulture, $"100 : {100 * Form.ActualBG / Form.ActualAG:0.0}, the sheet 100 : {100 * Layer.Plan.PartBG / Layer.Plan.PartAG:0.0} ({Math.Abs(off):0.0} % off)")
        : "nothing weighed yet";

    protected override void OnInitialized() => ago = Form.StartedAt is null ? 0 : -1;

    private Task AgoAsync(int minutes)
    {
        ago = minutes;
        Form.StartedAt = minutes == 0 ? null : minutes > 0 ? Sheet.Now.AddMinutes(-minutes) : Form.StartedAt ?? Sheet.Now;
        return Changed.InvokeAsync();
    }

    private Task TypedAsync(DateTime? at)
    {
        Form.StartedAt = at;
        return Changed.InvokeAsync();
    }

    private Task RoomAsync(double? celsius)
    {
        Form.RoomC = celsius;
        return Changed.InvokeAsync();
    }

    private Task LotAsync(string lot)
    {
        Form.Lot = lot ?? "";
        return Changed.InvokeAsync();
    }

    private Task WhyAsync(string? why)
    {
        Form.Why = why ?? "";
        return Changed.InvokeAsync();
    }

    private Task AbradedAsync() => WhyAsync("Abraded and cleaned the surface before the pour.");
}
