using System.Text.Json;
using Microsoft.JSInterop;
using Studio.Data;

namespace Studio.Shell;

/// <summary>Keeps a half-filled form on the device, so that a lost connection or a closed tab loses nothing. The only place that knows how.</summary>
public static class Drafts
{
    public static ValueTask KeepDraftAsync<T>(this IJSRuntime script, string key, T form) => script.KeepDraftTextAsync(key, JsonColumn.Write(form));

    /// <summary>As text that the page writes itself.</summary>
    public static ValueTask KeepDraftTextAsync(this IJSRuntime script, string key, string text) => script.InvokeVoidAsync("studio.keepDraft", key, text);

    /// <summary>The draft; null when there is none or it is of an older shape.</summary>
    public static async Task<T?> DraftAsync<T>(this IJSRuntime script, string key)
        where T : class => Read<T>(await script.DraftTextAsync(key));

    /// <summary>The draft as it was kept; null when there is none.</summary>
    public static ValueTask<string?> DraftTextAsync(this IJSRuntime script, string key) => script.InvokeAsync<string?>("studio.draft", key);

    public static ValueTask DropDraftAsync(this IJSRuntime script, string key) => script.InvokeVoidAsync("studio.dropDraft", key);

    private static T? Read<T>(string? json)
        where T : class
    {
        try
        {
            return JsonColumn.Read<T>(json);
        }
        catch (JsonException)
        {
            // written by another version of the program
            return null;
        }
    }
}
