using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Studio.Shell;

/// <summary>A day and time by the studio's clock; kept as UTC.</summary>
public sealed partial class MomentField
{
    private const string Stamp = "yyyy-MM-dd'T'HH:mm";

    private string text = "";
    private string? wrong;
    private DateTime? shown;

    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>The input's own id, for its label.</summary>
    [Parameter, EditorRequired]
    public string Id { get; set; } = "";

    [Parameter, EditorRequired]
    public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    /// <summary>UTC; null when it is empty.</summary>
    [Parameter]
    public DateTime? Value { get; set; }

    [Parameter]
    public EventCallback<DateTime?> ValueChanged { get; set; }

    /// <summary>True where an empty one cannot be kept.</summary>
    [Parameter]
    public bool Required { get; set; }

    [Parameter]
    public string? Wrong { get; set; }

    [Parameter]
    public string? Class { get; set; }

    /// <summary>The form's gatherer of unreadable fields, as of a number's.</summary>
    [CascadingParameter]
    public UnreadNumbers? Unread { get; set; }

    string IReadField.Name => Label;

    string IReadField.Typed => text;

    string? IReadField.Complaint => wrong;

    public void Dispose() => Unread?.Note(this, readable: true);

    void IReadField.PutBack()
    {
        Show();
        StateHasChanged();
    }

    protected override void OnInitialized() => UnreadNumbers.Need(Unread, Label);

    // a value set from outside replaces the text; one that the text itself gave does not
    protected override void OnParametersSet()
    {
        if (Value != shown || (text.Length == 0 && Value is not null && wrong is null))
        {
            Show();
        }
    }

    private void Show()
    {
        (shown, text) = (Value, Value is { } at ? Say.Local(at, Zone).ToString(Stamp, CultureInfo.InvariantCulture) : "");
        Complain(null);
    }

    private async Task TakeAsync(ChangeEventArgs e)
    {
        text = e.Value?.ToString() ?? "";
        if (text.Length == 0)
        {
            Complain(Required ? "Type day and time." : null);
            await TellAsync(null);
        }
        else if (!DateTime.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local) || Zone.IsInvalidTime(local))
        {
            Complain("That time does not exist by the studio's clock. Type day and time again.");
        }
        else
        {
            Complain(null);
            await TellAsync(TimeZoneInfo.ConvertTimeToUtc(DateTime.SpecifyKind(local, DateTimeKind.Unspecified), Zone));
        }
    }

    private async Task TellAsync(DateTime? utc)
    {
        if (wrong is null)
        {
            shown = utc;
            await ValueChanged.InvokeAsync(utc);
        }
    }

    private void Complain(string? complaint)
    {
        wrong = complaint;
        Unread?.Note(this, wrong is null);
    }
}
